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
	solid       state = "weighed solute"
	solution    state = "a finished solution"
	aliquot     state = "an aliquot"
	mixture     state = "a solution that is being diluted"
	weighedPart state = "a weighed aliquot"
)

var verbs = []Verb{Weigh, Start, MakeUpTo, Take, Add, WeighAliquot, WeighUpTo}

var grammars = map[Verb]grammar{
	Weigh:        {"on", quantity.Mass, []state{nothing, solid}, solid},
	Start:        {"", quantity.Share, []state{nothing}, solution},
	MakeUpTo:     {"in", quantity.Volume, []state{solid, aliquot}, solution},
	Take:         {"with", quantity.Volume, []state{solution, mixture, aliquot}, aliquot},
	Add:          {"with", quantity.Volume, []state{aliquot, mixture}, mixture},
	WeighAliquot: {"on", quantity.Mass, []state{solution, mixture}, weighedPart},
	WeighUpTo:    {"on", quantity.Mass, []state{solid, weighedPart}, solution},
}

func (p *Prep) readRoute(t *benchfile.Table) *Route {
	t.Need("name", "steps")
	r := &Route{Name: t.Text("name")}
	if slices.ContainsFunc(p.Routes, func(o *Route) bool { return o.Name == r.Name && r.Name != "" }) {
		t.Fail("name", "there are two routes called \""+r.Name+"\"", "give each its own name")
	}
	at := nothing
	tables := t.Tables("steps")
	for _, st := range tables {
		s, ok := p.readStep(st)
		if !ok {
			return r
		}
		at = r.follow(st, at, s)
		r.Steps = append(r.Steps, s)
	}
	switch {
	case t.Has("steps") && len(tables) == 0:
		t.Fail("steps", "the route has no steps", "")
	case at != solution && at != mixture:
		t.Fail("steps", fmt.Sprintf("the route ends with %s, not with a finished solution", at), "end with make-up-to, add or weigh-up-to")
	}
	return r
}

// follow checks that a step can stand where it does, and returns the new state.
func (r *Route) follow(t *benchfile.Table, at state, s Step) state {
	g := grammars[s.Verb]
	if !slices.Contains(g.after, at) {
		after := make([]string, len(g.after))
		for i, a := range g.after {
			after[i] = string(a)
		}
		t.FailKey(string(s.Verb), fmt.Sprintf("%s cannot come here: there is %s", s.Verb, at),
			fmt.Sprintf("it can follow %s", strings.Join(after, " or ")))
	}
	if s.Verb == WeighUpTo && at == weighedPart && s.Balance != r.Steps[len(r.Steps)-1].Balance {
		t.Fail("on", "the vessel was zeroed on another balance", "weigh the aliquot and the total on one balance")
	}
	return g.then
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
	t.Need(g.instrument)
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
		t.Fail("piece", fmt.Sprintf("there is no piece %d of it on the bench", s.Piece), fmt.Sprintf("the kit has count = %d", count))
	}
	return s, true
}

// oneVerb finds the verb of a step.
func oneVerb(t *benchfile.Table) (Verb, bool) {
	var found []Verb
	for _, v := range verbs {
		if t.Has(string(v)) {
			found = append(found, v)
		}
	}
	switch len(found) {
	case 1:
		return found[0], true
	case 0:
		words := make([]string, len(verbs))
		for i, v := range verbs {
			words[i] = string(v)
		}
		t.Fail("", "the step has no verb", "it needs one of "+strings.Join(words, ", "))
	default:
		t.FailKey(string(found[1]), fmt.Sprintf("a step has one verb; this one has %s and %s", found[0], found[1]), "make two steps of it")
	}
	return "", false
}

func (p *Prep) findBalance(t *benchfile.Table, key string) *equipment.Balance {
	name := t.Text(key)
	b := p.Kit.Balance(name)
	if name != "" && b == nil {
		p.failInstrument(t, key, name, "balance")
	}
	return b
}

func (p *Prep) findMeasure(t *benchfile.Table, key string, verb Verb) *equipment.Measure {
	name := t.Text(key)
	m := p.Kit.Measure(name)
	switch {
	case name == "":
	case m == nil:
		p.failInstrument(t, key, name, "vessel or pipette")
	case verb == MakeUpTo && !m.Kind.Receives():
		t.Fail(key, "a solution cannot be made up in the "+name, "use a flask or a cylinder")
	case verb != MakeUpTo && !m.Kind.Delivers():
		t.Fail(key, "the "+name+" holds a volume but does not measure one out", "use a pipette or a cylinder")
	}
	return m
}

// failInstrument says that the kit has no such instrument, or has one of that
// name that is of another sort.
func (p *Prep) failInstrument(t *benchfile.Table, key, name, noun string) {
	if slices.Contains(p.Kit.Names(), name) {
		t.Fail(key, fmt.Sprintf("the %s is not a %s", name, noun), "")
		return
	}
	t.FailChoice(key, "instrument in "+p.Kit.File, name, p.Kit.Names(), "")
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
	if name != "" {
		t.FailChoice(string(Start), "[[stock]] of this prep", name, names, "")
	}
	return nil
}
