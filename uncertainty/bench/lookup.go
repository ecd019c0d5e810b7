package bench

import (
	"fmt"
	"slices"
	"strings"

	"minim/equipment"
	"minim/equipment/benchfile"
	"minim/uncertainty/route"
)

func (p prepReader) findBalance(t *benchfile.Table, key string) *equipment.Balance {
	name := t.Text(key)
	b := p.Kit.Balance(name)
	if name != "" && b == nil {
		p.failInstrument(t, key, name, "balance", p.balances())
	}
	return b
}

func (p prepReader) findMeasure(t *benchfile.Table, key string, verb route.Verb) *equipment.Measure {
	name := t.Text(key)
	m := p.Kit.Measure(name)
	switch {
	case name == "":
	case m == nil:
		p.failInstrument(t, key, name, "vessel or pipette", p.measures(verb))
	case fits(m, verb):
	case verb == route.MakeUpTo:
		t.Fail(key, "a solution cannot be made up in the "+name, choose(p.measures(verb)))
	case verb == route.Pour:
		t.Fail(key, "the "+name+" is not a vessel to pour from", choose(p.measures(verb)))
	default:
		t.Fail(key, "the "+name+" holds a volume but does not measure one out", choose(p.measures(verb)))
	}
	return m
}

// fits reports whether a verb can use an instrument.
func fits(m *equipment.Measure, verb route.Verb) bool {
	if verb == route.MakeUpTo || verb == route.Pour {
		return m.Kind.Traits().Receives
	}
	return m.Kind.Traits().Delivers
}

// measures lists the instruments of the kit that a verb can use.
func (p prepReader) measures(verb route.Verb) (names []string) {
	for _, m := range p.Kit.Measures {
		if fits(m, verb) {
			names = append(names, m.Name)
		}
	}
	return names
}

func (p prepReader) balances() (names []string) {
	for _, b := range p.Kit.Balances {
		names = append(names, b.Name)
	}
	return names
}

// withoutKit reports that the kit could not be found, which is the mistake: of its
// instruments nothing can be said.
func (p prepReader) withoutKit() bool { return len(p.Kit.Names())+len(p.Kit.Candidates.Names()) == 0 }

func choose(among []string) string {
	if len(among) == 0 {
		return "the kit has none that fits"
	}
	return "choose from " + strings.Join(among, ", ")
}

// failInstrument says that the kit has no such instrument, or has one of that
// name that is of another sort or not on the bench.
func (p prepReader) failInstrument(t *benchfile.Table, key, name, noun string, fitting []string) {
	switch {
	case p.withoutKit():
		// said already
	case slices.Contains(p.Kit.Names(), name):
		t.Fail(key, fmt.Sprintf("the %s is not a %s", name, noun), choose(fitting))
	case slices.Contains(p.Kit.Candidates.Names(), name):
		t.Fail(key, fmt.Sprintf("the %s is a candidate and not on the bench", name), choose(fitting))
	default:
		t.FailChoice(key, noun+" in the kit", name, fitting, "")
	}
}
