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
		p.failInstrument(t, key, name, "balance", namesOf(p.Kit.Balances, func(b *equipment.Balance) string { return b.Name }, nil))
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
		failFor(t, key, "a solution cannot be made up in the "+name, p.measures(verb))
	case verb == route.Pour:
		failFor(t, key, "the "+name+" is not a vessel to pour from", p.measures(verb))
	default:
		failFor(t, key, "the "+name+" holds a volume but does not measure one out", p.measures(verb))
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
func (p prepReader) measures(verb route.Verb) []string {
	return namesOf(p.Kit.Measures, measureName, func(m *equipment.Measure) bool { return fits(m, verb) })
}

func measureName(m *equipment.Measure) string { return m.Name }

// withoutKit reports that the kit could not be found, which is the mistake: of its
// instruments nothing can be said.
func (p prepReader) withoutKit() bool { return len(p.Kit.Names())+len(p.Kit.Candidates.Names()) == 0 }

// failFor records a mistake that another instrument would cure.
func failFor(t *benchfile.Table, key, message string, among []string) {
	if len(among) == 0 {
		t.Fail(key, message, "the kit has none that fits")
	} else {
		t.Fail(key, message, "choose from "+strings.Join(among, ", "))
	}
}

// failInstrument says that the kit has no such instrument, or has one of that
// name that is of another sort or not on the bench.
func (p prepReader) failInstrument(t *benchfile.Table, key, name, noun string, fitting []string) {
	switch {
	case p.withoutKit():
		// said already
	case slices.Contains(p.Kit.Names(), name):
		failFor(t, key, fmt.Sprintf("the %s is not a %s", name, noun), fitting)
	case slices.Contains(p.Kit.Candidates.Names(), name):
		failFor(t, key, fmt.Sprintf("the %s is a candidate and not on the bench", name), fitting)
	default:
		t.FailWith(key, benchfile.NoSuch(noun+" in the kit", name, fitting))
	}
}
