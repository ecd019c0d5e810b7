package bench

import (
	"fmt"
	"slices"
	"strings"

	"minim/equipment"
	"minim/equipment/benchfile"
	"minim/equipment/quantity"
	"minim/uncertainty/route"
	"minim/uncertainty/strengths"
)

func (p prepReader) readRoute(t *benchfile.Table) *route.Route {
	t.Need("name", "steps")
	r := &route.Route{Name: nameOf(t, "routes", namesOf(p.Routes, routeName, nil), ownName)}
	tables, known := t.Tables("steps"), 0
	sound := t.Sound("steps")
	for i, st := range tables {
		s, ok := p.readStep(st)
		if r.Steps = append(r.Steps, s); ok && known == i {
			known++
		}
		failStrength(st, string(s.Verb), p.Lacks(&s))
	}
	if sound && p.checkOrder(&route.Route{Steps: r.Steps[:known]}, tables) && known == len(tables) {
		p.checkWhole(t, r, tables)
	}
	if t.Has("steps") && len(tables) == 0 {
		t.Fail("steps", "the route has no steps", "")
	}
	return r
}

// checkOrder records the first step that cannot stand where it does; after it nothing is known.
func (p prepReader) checkOrder(r *route.Route, tables []*benchfile.Table) (inOrder bool) {
	wrong := r.Misplaced()
	if wrong != nil {
		failStep(tables[wrong.Step], wrong)
	}
	return wrong == nil
}

// checkWhole checks what the steps of a route say in their order, and with what it ends.
func (p prepReader) checkWhole(t *benchfile.Table, r *route.Route, tables []*benchfile.Table) {
	for _, wrong := range p.CheckOptions(r) {
		failStep(tables[wrong.Step], wrong)
	}
	if end := r.Unfinished(); end != "" && len(tables) > 0 {
		t.Fail("steps", fmt.Sprintf("the route ends with %s, not with a finished solution", end), "end with make-up-to, add or weigh-up-to")
	}
}

// failStep records what is wrong with a step.
func failStep(t *benchfile.Table, wrong *route.StepError) {
	if wrong.Key == "" || wrong.Value {
		t.Fail(wrong.Key, wrong.Message, wrong.Hint)
	} else {
		t.FailKey(wrong.Key, wrong.Message, wrong.Hint)
	}
}

func routeName(r *route.Route) string { return r.Name }

// readPacket reads a bought amount that is used whole.
func (p prepReader) readPacket(t *benchfile.Table) *route.Packet {
	t.Need("name", "content")
	k := &route.Packet{Name: nameOf(t, "packets", namesOf(p.Packets, packetName, nil), ownName)}
	inGrams := false
	parse := func(text string) (float64, error) {
		s, err := strengths.Parse(text + "/mL")
		if err != nil || s.Unit.Basis != strengths.ByActivity {
			inGrams = true
			return inLimit(quantity.Mass, quantity.Limits.Supply, "no packet holds %q", "state a mass between 1 µg and 1000 kg, or units of activity as in \"5000 U\"")(text)
		}
		k.InUnits = true
		return s.Value / s.Unit.Per, nil
	}
	k.Content = estimate(t, "content", parse, parse)
	if k.InUnits && inGrams {
		t.Fail("content", "the content is a mass here and units of activity there", "state all of it in one")
	}
	return k
}

func stockName(s *route.Stock) string   { return s.Name }
func packetName(k *route.Packet) string { return k.Name }

// find returns the item of that name that a start names, or records a mistake.
func find[T any](t *benchfile.Table, verb route.Verb, table string, items []*T, name func(*T) string) *T {
	wanted, names := t.Text(string(verb)), namesOf(items, name, nil)
	i := slices.Index(names, wanted)
	switch {
	case i >= 0:
		return items[i]
	case wanted == "" || slices.Contains(names, ""): // one has no name, which is the mistake
	case len(names) == 0:
		t.FailFor(t.Root(), []string{table}, string(verb), "the prep has no [["+table+"]]", "add one, with its name")
	default:
		none := benchfile.NoSuch("[["+table+"]]", wanted, names)
		t.FailFor(t.Root(), []string{table}, string(verb), none.Message, none.Hint)
	}
	return nil
}

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
