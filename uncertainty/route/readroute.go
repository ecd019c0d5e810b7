package route

import (
	"fmt"
	"slices"
	"strings"

	"minim/equipment"
	"minim/equipment/benchfile"
)

func (p *Prep) readRoute(t *benchfile.Table) *Route {
	t.Need("name", "steps")
	r := &Route{Name: t.Text("name")}
	if slices.ContainsFunc(p.Routes, func(o *Route) bool { return o.Name == r.Name && r.Name != "" }) {
		t.Fail("name", "there are two routes called \""+r.Name+"\"", "give each its own name")
	}
	tables := t.Tables("steps")
	at, inOrder := nothing, t.Sound("steps")
	for _, st := range tables {
		s, ok := p.readStep(st)
		inOrder = inOrder && ok && r.follows(st, at, s) // after a step out of order nothing is known
		at = grammars[s.Verb].then
		r.Steps = append(r.Steps, s)
		failStrength(st, string(s.Verb), p.lackOf(&s))
	}
	if inOrder {
		r.checkOptions(p, tables)
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
		t.FailKey(s.Key(), fmt.Sprintf("cannot come here, where there is %s", at), hint)
		return false
	}
	if s.Verb == WeighUpTo && at == weighedPart {
		zeroed := r.Steps[len(r.Steps)-1]
		if s.Balance != nil && zeroed.Balance != nil && s.Balance != zeroed.Balance || max(s.Piece, 1) != max(zeroed.Piece, 1) {
			t.Fail("on", "the vessel was zeroed on another balance", "weigh the aliquot and the total on one balance")
		}
	}
	if at == solid && (s.Verb == Measured) != r.liquidSolute() && g.then == solid {
		t.FailKey(string(s.Verb), "the solute is measured by volume in one step and by mass in another", "use one of the two for all of it")
		return false
	}
	return true
}

// liquidSolute reports whether the solute was measured by volume.
func (r *Route) liquidSolute() bool {
	return slices.ContainsFunc(r.Steps, func(s Step) bool { return s.Verb == Measured })
}

// checkOptions checks what depends on the steps before and after.
func (r *Route) checkOptions(p *Prep, tables []*benchfile.Table) {
	own := mediumOf(p.Solvent.Name)
	liquid := own
	for i := range r.Steps {
		s, t := &r.Steps[i], tables[i]
		if s.Verb == Start && s.Stock != nil && s.Stock.Solvent != "" {
			liquid = mediumOf(s.Stock.Solvent)
		}
		switch {
		case s.Measure == nil:
			// nothing to be said of it
		case s.Emptying == equipment.Rinsed && !r.thenToAMark(i):
			t.FailKey("rinsed", "the solvent of the rinse is not measured", "rinse only into what is then made up to a mark or weighed up")
		case s.State == Used && s.Measure.SingleUse:
			t.FailKey("state", "the "+s.Measure.Name+" is single-use, a new one each time", "leave state out")
		case s.State == Used && !r.usedBefore(i):
			t.FailKey("state", "the "+s.Measure.Name+" has not been used before this step", "leave state out, or say \"wet\"")
		case s.Verb == DissolveIn && s.Contraction.Known && !r.liquidSolute():
			t.FailKey("contraction", "is stated for a solid, which takes up its specific volume", "state specific-volume in the table [solute]")
		case s.Verb.brings(solvent) && s.Verb.AddsTo():
			s.checkContraction(t, liquid, own)
		case s.Verb == Strengthen && s.Stock != nil && s.Stock.Solvent != "":
			s.checkContraction(t, mediumOf(s.Stock.Solvent), liquid)
		}
		if s.Verb.Fills() {
			liquid = own
		}
	}
}

// checkContraction asks for the contraction of two liquids of which nothing is known.
func (s *Step) checkContraction(t *benchfile.Table, a, b medium) {
	if a.name != "" && b.name != "" && a.name != b.name && !s.Contraction.Known && !alcoholic(a, b) {
		t.Fail("", fmt.Sprintf("%s and %s contract on mixing by an amount that is not stated", a.name, b.name),
			"state contraction = \"2 % of volume\", or make up to a mark")
	}
}

// thenToAMark reports whether what receives the liquid of step i is then made up
// to a mark, or to a mass.
func (r *Route) thenToAMark(i int) bool {
	for _, s := range r.Steps[i+1:] {
		if g := grammars[s.Verb]; g.then == solid || g.then == aliquot && g.brings == aPart {
			continue
		}
		return s.Verb.Fills()
	}
	return false
}

// usedBefore reports whether a step before used the same piece, or may have: its
// instrument is not known.
func (r *Route) usedBefore(i int) bool {
	for _, s := range r.Steps[:i] {
		if s.Measure == nil && s.Balance == nil && s.Verb.usesInstrument() {
			return true
		}
		if s.Measure != nil && s.piece() == r.Steps[i].piece() {
			return true
		}
	}
	return false
}
