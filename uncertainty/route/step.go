package route

import (
	"fmt"
	"slices"
	"strings"

	"minim/equipment"
	"minim/equipment/benchfile"
	"minim/equipment/quantity"
)

// Verb is what a step does.
type Verb string

// The verbs of a step.
const (
	Weigh        Verb = "weigh"         // solute, on a balance
	Start        Verb = "start"         // from a stock
	MakeUpTo     Verb = "make-up-to"    // the mark of a vessel
	Take         Verb = "take"          // a measured volume
	Add          Verb = "add"           // a measured volume of solvent
	WeighAliquot Verb = "weigh-aliquot" // a part of the solution, on a balance
	WeighUpTo    Verb = "weigh-up-to"   // a total mass, with solvent
)

// Step is one step of a route.
type Step struct {
	Verb Verb
	// Amount is the display reading in g or the mark in mL.
	Amount float64
	// Balance, Measure or Stock is what the step uses; the others are nil.
	Balance *equipment.Balance
	Measure *equipment.Measure
	Stock   *Stock
	// Piece of the instrument, from 1; 0 when not stated.
	Piece int
	// Reading is the step's own word for how carefully is read, or "".
	Reading equipment.Reading
}

// grammar says for a verb which key names its instrument, what the amount is,
// and after which states of the work it can stand.
type grammar struct {
	instrument string
	kind       quantity.Kind
	after      []state
	then       state
}

// state is what stands on the bench between two steps.
type state string

const (
	nothing     state = "nothing yet"
	stock       state = "a stock"
	solid       state = "weighed solute"
	solution    state = "a finished solution"
	aliquot     state = "an aliquot"
	mixture     state = "a solution that is being diluted"
	weighedPart state = "a weighed aliquot"
)

var verbs = []Verb{Weigh, Start, MakeUpTo, Take, Add, WeighAliquot, WeighUpTo}

var grammars = map[Verb]grammar{
	Weigh:        {"on", quantity.Mass, []state{nothing, solid}, solid},
	Start:        {"", quantity.Share, []state{nothing}, stock},
	MakeUpTo:     {"in", quantity.Volume, []state{solid, aliquot}, solution},
	Take:         {"with", quantity.Volume, []state{stock, solution, mixture, aliquot}, aliquot},
	Add:          {"with", quantity.Volume, []state{aliquot, mixture}, mixture},
	WeighAliquot: {"on", quantity.Mass, []state{stock, solution, mixture}, weighedPart},
	WeighUpTo:    {"on", quantity.Mass, []state{solid, weighedPart}, solution},
}

func (p *Prep) readRoute(t *benchfile.Table) *Route {
	t.Need("name", "steps")
	r := &Route{Name: t.Text("name")}
	if slices.ContainsFunc(p.Routes, func(o *Route) bool { return o.Name == r.Name && r.Name != "" }) {
		t.Fail("name", "there are two routes called \""+r.Name+"\"", "give each its own name")
	}
	at, inOrder := nothing, true
	tables := t.Tables("steps")
	for _, st := range tables {
		s, ok := p.readStep(st)
		if !ok {
			return r
		}
		inOrder = r.follows(st, at, s) && inOrder
		at = grammars[s.Verb].then
		r.Steps = append(r.Steps, s)
	}
	switch {
	case t.Has("steps") && len(tables) == 0:
		t.Fail("steps", "the route has no steps", "")
	case inOrder && at != solution && at != mixture:
		t.Fail("steps", fmt.Sprintf("the route ends with %s, not with a finished solution", at), "end with make-up-to, add or weigh-up-to")
	}
	return r
}

// follows checks that a step can stand where it does.
func (r *Route) follows(t *benchfile.Table, at state, s Step) bool {
	g := grammars[s.Verb]
	if !slices.Contains(g.after, at) {
		hint := "it must come first"
		if s.Verb != Start {
			after := make([]string, len(g.after))
			for i, a := range g.after {
				after[i] = string(a)
			}
			hint = "it can follow " + strings.Join(after, " or ")
		}
		t.FailKey(string(s.Verb), fmt.Sprintf("cannot come here, where there is %s", at), hint)
		return false
	}
	if s.Verb == WeighUpTo && at == weighedPart && s.Balance != r.Steps[len(r.Steps)-1].Balance {
		t.Fail("on", "the vessel was zeroed on another balance", "weigh the aliquot and the total on one balance")
	}
	return true
}

// readStep reads one step; ok is false when it has no verb to go by.
func (p *Prep) readStep(t *benchfile.Table) (s Step, ok bool) {
	verb, ok := oneVerb(t)
	if !ok {
		return Step{}, false
	}
	s = Step{Verb: verb}
	g := grammars[verb]
	if verb == Start {
		s.Stock = p.findStock(t)
		return s, true
	}
	s.Amount = t.Positive(string(verb), g.kind)
	s.Piece = t.Count("piece", 1)
	needInstrument(t, verb, g.instrument)
	count := 1
	if g.kind == quantity.Mass {
		if s.Balance = p.findBalance(t, g.instrument); s.Balance != nil {
			count = s.Balance.Count
		}
	} else {
		s.Reading = equipment.Reading(t.Word("reading", equipment.Readings()...))
		if s.Measure = p.findMeasure(t, g.instrument, verb); s.Measure != nil {
			count = s.Measure.Count
		}
	}
	if s.Piece > count {
		t.Fail("piece", fmt.Sprintf("there is no piece %d of it on the bench", s.Piece), fmt.Sprintf("the kit says count = %d, or nothing for one", count))
	}
	return s, true
}

// needInstrument asks for the key that names the instrument, and says so when
// another verb's key stands in its place.
func needInstrument(t *benchfile.Table, verb Verb, key string) {
	if slices.Contains(t.Keys(), key) {
		return
	}
	for _, other := range []string{"on", "in", "with"} {
		if slices.Contains(t.Keys(), other) {
			t.FailKey(other, fmt.Sprintf("%s does not say %s what, but %s what", verb, other, key), "write "+key)
			return
		}
	}
	t.Need(key)
}

// oneVerb finds the verb of a step.
func oneVerb(t *benchfile.Table) (Verb, bool) {
	var found []Verb
	for _, key := range t.Keys() {
		if slices.Contains(verbs, Verb(key)) {
			found = append(found, Verb(key))
		}
	}
	switch len(found) {
	case 1:
		return found[0], true
	case 0:
		failVerb(t)
	default:
		for _, v := range found {
			t.Has(string(v))
		}
		t.FailKey(string(found[1]), fmt.Sprintf("a step has one verb; this one has %s and %s", found[0], found[1]), "make two steps of it")
	}
	return "", false
}

// failVerb says that a step has no verb, or that it is misspelt.
func failVerb(t *benchfile.Table) {
	words := make([]string, len(verbs))
	for i, v := range verbs {
		words[i] = string(v)
	}
	for _, key := range t.Keys() {
		if near := benchfile.Nearest(key, words); near != "" {
			t.FailKey(key, "there is no such step", "write "+near)
			return
		}
	}
	t.Fail("", "the step has no verb", "it needs one of "+strings.Join(words, ", "))
}

func (p *Prep) findBalance(t *benchfile.Table, key string) *equipment.Balance {
	name := t.Text(key)
	b := p.Kit.Balance(name)
	if name != "" && b == nil {
		p.failInstrument(t, key, name, "balance", p.balances())
	}
	return b
}

func (p *Prep) findMeasure(t *benchfile.Table, key string, verb Verb) *equipment.Measure {
	name := t.Text(key)
	m := p.Kit.Measure(name)
	switch {
	case name == "":
	case m == nil:
		p.failInstrument(t, key, name, "vessel or pipette", p.measures(verb))
	case verb == MakeUpTo && !m.Kind.Receives():
		t.Fail(key, "a solution cannot be made up in the "+name, choose(p.measures(verb)))
	case verb != MakeUpTo && !m.Kind.Delivers():
		t.Fail(key, "the "+name+" holds a volume but does not measure one out", choose(p.measures(verb)))
	}
	return m
}

// measures lists the instruments of the kit that a verb can use.
func (p *Prep) measures(verb Verb) (names []string) {
	for _, m := range p.Kit.Measures {
		if verb == MakeUpTo && m.Kind.Receives() || verb != MakeUpTo && m.Kind.Delivers() {
			names = append(names, m.Name)
		}
	}
	return names
}

func (p *Prep) balances() (names []string) {
	for _, b := range p.Kit.Balances {
		names = append(names, b.Name)
	}
	return names
}

func choose(among []string) string {
	if len(among) == 0 {
		return "the kit has none that fits"
	}
	return "choose from " + strings.Join(among, ", ")
}

// failInstrument says that the kit has no such instrument, or has one of that
// name that is of another sort.
func (p *Prep) failInstrument(t *benchfile.Table, key, name, noun string, fitting []string) {
	if slices.Contains(p.Kit.Names(), name) {
		t.Fail(key, fmt.Sprintf("the %s is not a %s", name, noun), choose(fitting))
		return
	}
	t.FailChoice(key, noun+" in the kit", name, fitting, "")
}

func (p *Prep) findStock(t *benchfile.Table) *Stock {
	name := t.Text(string(Start))
	names := make([]string, len(p.Stocks))
	for i, s := range p.Stocks {
		if s.Name == name {
			return s
		}
		names[i] = s.Name
	}
	if name != "" && len(names) == 0 {
		t.Fail(string(Start), "the prep has no [[stock]]", "add one with its name and strength")
	} else if name != "" {
		t.FailChoice(string(Start), "[[stock]]", name, names, "")
	}
	return nil
}
