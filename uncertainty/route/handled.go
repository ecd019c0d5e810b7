package route

import (
	"math"

	"minim/equipment"
	"minim/report/words/note"
	"minim/uncertainty"
	"minim/uncertainty/hazards"
)

// Handled is something that a route handles: the solute as it is weighed or measured out, a
// packet or a stock that stands ready, or a solution that it makes.
type Handled struct {
	// Step, from 1, that brings it in or makes it.
	Step int
	// Name of what stands ready; "" for a solution that is made.
	Name string
	// Stock is nil for what is not one.
	Stock *Stock
	// Rung is the strength of a rung of the ladder, as it is written in the prep; "" for
	// all else.
	Rung string
	// Bottle that a solution is filled into, numbered in the order of the steps; 0 for
	// what stands ready and for rungs. Last is the solution wanted.
	Bottle int
	Last   bool
	// Uses are the steps that take from it, from 1.
	Uses []int
	// Undiluted: it is the solute itself, which has no strength.
	Undiluted bool
	// Analytic and Quoted are its strength, in the unit of the target: of the solution
	// wanted those of the result, of any other those of the model of the steps up to it.
	Analytic uncertainty.Analytic
	Quoted   uncertainty.Quoted
	// Uninformative says why the strength means nothing; nothing where it means something.
	Uninformative note.Note
	// Hazards are the words for its strength and for the solute.
	Hazards hazards.OfSolution
	// Solvents are the liquids in it beside the solute, each once.
	Solvents []Contained
}

// Contained is a liquid in a solution, with the words that are stated for it undiluted.
type Contained struct {
	Name    string
	Hazards []string
}

// Handled lists what the route of a possible result handles, in the order of its steps: after
// the solution wanted come the rungs of the ladder that is made from it.
func (p *Prep) Handled(r *Result, coverage float64) ([]Handled, error) {
	c, err := p.compile(r.Route)
	if err != nil {
		return nil, err
	}
	w := handling{compiler: c, coverage: coverage, seen: make(map[string]bool)}
	for i := range r.Route.Steps {
		w.broughtIn(i)
		if l := c.solutions[i]; l != nil && l != c.current {
			w.made(i, l)
		}
	}
	w.wanted(r)
	w.rungs(r)
	return w.list, nil
}

// handling goes through the steps of a compiled route.
type handling struct {
	*compiler
	coverage float64
	// seen are the names of what stands ready and is listed already.
	seen     map[string]bool
	list     []Handled
	solvents []Contained
}

// broughtIn lists what a step brings in for the first time.
func (w *handling) broughtIn(i int) {
	s, solute := &w.route.Steps[i], &w.prep.Solute
	switch {
	case s.Verb.brings(aMass, aVolume):
		w.ready(Handled{Step: i + 1, Name: solute.Weighed(), Undiluted: true})
	case s.Verb.brings(aPacket):
		w.ready(Handled{Step: i + 1, Name: s.Packet.Name, Undiluted: true})
	case s.Verb.brings(solvent):
		w.pour(w.prep.Solvent.Name)
	}
	if s.Stock != nil {
		w.ready(w.stockOf(i, s.Stock))
		w.pour(s.Stock.Solvent)
	}
}

// ready lists what stands ready, once.
func (w *handling) ready(h Handled) {
	if h.Undiluted {
		h.Hazards.Undiluted = w.prep.Solute.Hazards
	}
	if !w.seen[h.Name] {
		w.seen[h.Name] = true
		w.list = append(w.list, h)
	}
}

// pour adds a liquid to those that all later solutions hold, "" for the solvent of the prep.
func (w *handling) pour(name string) {
	w.solvents = w.prep.withLiquid(w.solvents, name)
}

// stockOf is a stock.
func (w *handling) stockOf(i int, s *Stock) Handled {
	h := Handled{Step: i + 1, Name: s.Name, Stock: s, Solvents: w.prep.withLiquid(nil, s.Solvent)}
	h.Analytic, h.Quoted, h.Uninformative = w.strengthOf(w.stocks[s], w.coverage)
	h.Hazards = w.hazardsOfStock(s, w.stocks[s], w.coverage)
	return h
}

// strengthOf is the strength of a solution in the unit of the target, within what is
// possible. One that cannot be worked out could be any; unknown then says so.
func (c *compiler) strengthOf(l *liquid, coverage float64) (a uncertainty.Analytic, q uncertainty.Quoted, unknown note.Note) {
	unit := c.prep.Target.Unit
	node, err := c.toUnit(l, unit)
	if err == nil {
		a, err = c.mixed(node, coverage)
	}
	if err != nil {
		return a, uncertainty.Quoted{Upper: math.Inf(1)}, note.Of("strength-not-known", unit.Name)
	}
	low, high := c.model.Range(node)
	return a, uncertainty.Quoted{Lower: max(low, a.Lower()), Upper: min(high, a.Upper())}, note.Note{}
}

// made lists a solution that a step from 0 finishes on the way.
func (w *handling) made(i int, l *liquid) {
	h := Handled{Step: i + 1, Solvents: w.solvents}
	h.Analytic, h.Quoted, h.Uninformative = w.strengthOf(l, w.coverage)
	if h.Uninformative.None() {
		h.Uninformative, _ = w.uninformative(w.coverage, i)
	}
	h.Uninformative = note.Or(h.Uninformative, couldBeNothing(h.Analytic.Lower(), h.Quoted.Upper, w.prep.Target.Unit))
	w.bottled(h)
}

// wanted lists the solution that the route ends in, whose strength is that of the result.
func (w *handling) wanted(r *Result) {
	h := Handled{Step: len(r.Route.Steps), Last: true, Solvents: w.solvents, Analytic: r.Analytic, Quoted: r.Quoted, Uninformative: r.Uninformative}
	if r.Quoted == (uncertainty.Quoted{}) { // not simulated
		h.Quoted = uncertainty.Quoted{Lower: r.Analytic.Lower(), Upper: r.Analytic.Upper()}
	}
	w.bottled(h)
}

// rungs lists the rungs of a ladder that can be made.
func (w *handling) rungs(r *Result) {
	w.pour(w.prep.Solvent.Name)
	for i := range r.Ladder {
		if g := &r.Ladder[i]; g.Reason.None() {
			w.list = append(w.list, Handled{
				Step: len(r.Route.Steps), Rung: g.Strength.Text, Analytic: g.Analytic, Uninformative: note.Or(r.Uninformative, g.Uninformative), Solvents: w.solvents,
				Quoted: uncertainty.Quoted{Lower: g.Analytic.Lower(), Upper: g.Analytic.Upper()}, Hazards: g.Hazards,
			})
		}
	}
}

// bottled lists a solution in a bottle of its own.
func (w *handling) bottled(h Handled) {
	h.Hazards = w.prep.HazardsAt(h.Quoted.Lower, h.Quoted.Upper)
	h.Bottle = 1
	for i := range w.list {
		h.Bottle = max(h.Bottle, w.list[i].Bottle+1)
	}
	h.Uses = w.route.takenFrom(h.Step)
	w.list = append(w.list, h)
}

// takenFrom are the steps, from 1, that take from the solution which a step has finished.
func (r *Route) takenFrom(step int) (list []int) {
	later := step // the last step by which a solution was finished
	for i := step; i < len(r.Steps); i++ {
		s := &r.Steps[i]
		fromIt := later == step && s.Verb.brings(aPart, theWhole)
		if fromIt || s.Verb == Strengthen && s.From == step {
			list = append(list, i+1)
		}
		if r.Finished(i) {
			later = i + 1
		}
	}
	return list
}

// withLiquid adds a liquid to those that a solution holds, "" for the solvent of the prep.
// A name and its aliases are one liquid; words are stated for the solvent of the prep only.
func (p *Prep) withLiquid(list []Contained, name string) []Contained {
	if name == "" || equipment.SameLiquid(name, p.Solvent.Name) {
		name = p.Solvent.Name
	}
	for _, c := range list {
		if equipment.SameLiquid(c.Name, name) {
			return list
		}
	}
	c := Contained{Name: name}
	if name == p.Solvent.Name {
		c.Hazards = p.Solvent.Hazards
	}
	return append(list[:len(list):len(list)], c)
}

// Liquids are those that the solute is dissolved in: the solvent of the prep, and those of
// the stocks that routes use, each once.
func (p *Prep) Liquids(routes ...*Route) []Contained {
	list := p.withLiquid(nil, "")
	for _, r := range routes {
		for i := range r.Steps {
			if s := r.Steps[i].Stock; s != nil {
				list = p.withLiquid(list, s.Solvent)
			}
		}
	}
	return list
}
