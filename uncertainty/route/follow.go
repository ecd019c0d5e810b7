package route

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"minim/equipment"
	"minim/uncertainty/mixed"
)

// StepError says what is wrong with a step among the others.
type StepError struct {
	// Step from 0, and the Key of it that is wrong; "" for all of it. Value: what is wrong is
	// what the key says, not that it is there.
	Step  int
	Key   string
	Value bool
	// Message and Hint say what is wrong and what would be right.
	Message, Hint string
}

// Misplaced is the first step that cannot stand where it does, nil where all can.
func (r *Route) Misplaced() *StepError {
	at := nothing
	for i := range r.Steps {
		if e := r.follows(i, at); e != nil {
			return e
		}
		at = r.Steps[i].Verb.Traits().then
	}
	return nil
}

// follows checks that a step can stand where it does.
func (r *Route) follows(i int, at state) *StepError {
	s := &r.Steps[i]
	g := s.Verb.Traits()
	if !slices.Contains(g.after, at) {
		e := &StepError{Step: i, Key: g.Key, Message: fmt.Sprintf("cannot come here, where there is %s", at), Hint: "it must come first"}
		if s.Verb != Start {
			after := make([]string, len(g.after))
			for i, a := range g.after {
				after[i] = a.String()
			}
			e.Hint = fmt.Errorf("it can follow %s", strings.Join(after, " or ")).Error()
		}
		return e
	}
	before := Route{Steps: r.Steps[:i]}
	if at == solid && (s.Verb == Measured) != before.liquidSolute() && g.then == solid {
		return &StepError{Step: i, Key: g.Key, Message: "the solute is measured by volume in one step and by mass in another", Hint: "use one of the two for all of it"}
	}
	return nil
}

// liquidSolute reports whether the solute was measured by volume.
func (r *Route) liquidSolute() bool {
	return slices.ContainsFunc(r.Steps, func(s Step) bool { return s.Verb == Measured })
}

// CheckOptions checks what a step says by the steps before and after. These must be able to
// follow each other: see [Route.Misplaced].
func (p *Prep) CheckOptions(r *Route) (wrong []*StepError) {
	own := mixed.Of(p.Solvent.Name)
	liquid := own
	for i := range r.Steps {
		s := &r.Steps[i]
		if s.Verb != Strengthen && s.Stock != nil {
			liquid = mixed.Of(cmp.Or(s.Stock.Solvent, p.Solvent.Name))
		}
		for _, e := range []*StepError{r.zeroedElsewhere(i), r.checkUse(i), s.checkContraction(liquid, own)} {
			if e != nil {
				e.Step = i
				wrong = append(wrong, e)
				break
			}
		}
		if s.Verb.Traits().Fills {
			liquid = own
		}
	}
	return wrong
}

// zeroedElsewhere refuses a total that is weighed on another balance than its aliquot.
func (r *Route) zeroedElsewhere(i int) *StepError {
	s := &r.Steps[i]
	if !s.Verb.Traits().Fills || i == 0 || r.Steps[i-1].Verb.Traits().then != weighedPart {
		return nil
	}
	zeroed := &r.Steps[i-1]
	if s.Balance != nil && zeroed.Balance != nil && s.Balance != zeroed.Balance || max(s.Piece, 1) != max(zeroed.Piece, 1) {
		return &StepError{Key: "on", Value: true, Message: "the vessel was zeroed on another balance", Hint: "weigh the aliquot and the total on one balance"}
	}
	return nil
}

// checkUse checks what is said of how an instrument is used.
func (r *Route) checkUse(i int) *StepError {
	s := &r.Steps[i]
	switch {
	case s.Measure == nil:
		// nothing to be said of it
	case s.Emptying == equipment.Rinsed && !r.thenToAMark(i):
		return &StepError{Key: "rinsed", Message: "the solvent of the rinse is not measured", Hint: "rinse only into what is then made up to a mark or weighed up"}
	case s.State == Used && s.Measure.SingleUse:
		return &StepError{Key: "state", Message: "the " + s.Measure.Name + " is single-use, a new one each time", Hint: "leave state out"}
	case s.State == Used && !r.usedBefore(i):
		return &StepError{Key: "state", Message: "the " + s.Measure.Name + " has not been used before this step", Hint: "leave state out, or say \"wet\""}
	case s.Verb == DissolveIn && s.Contraction.Known && !r.liquidSolute():
		return &StepError{Key: "contraction", Message: "is stated for a solid, which takes up its specific volume", Hint: "state specific-volume in the table [solute]"}
	}
	return nil
}

// checkContraction asks for the contraction of two liquids of which nothing is known.
func (s *Step) checkContraction(liquid, own mixed.Liquid) *StepError {
	a, b := liquid, own
	switch {
	case s.Measure == nil:
		return nil
	case s.Verb == Strengthen && s.Stock != nil && s.Stock.Solvent != "":
		a, b = mixed.Of(s.Stock.Solvent), liquid
	case !s.Verb.brings(solvent) || !s.Verb.Traits().AddsTo:
		return nil
	}
	if a.Name == "" || b.Name == "" || a.Name == b.Name || s.Contraction.Known || mixed.Alcoholic(a, b) {
		return nil
	}
	return &StepError{Message: fmt.Sprintf("%s and %s contract on mixing by an amount that is not stated", a.Name, b.Name),
		Hint: "state contraction = \"2 % of volume\", or make up to a mark"}
}

// FirstImpossible is the first step, from 0, of a route whose steps can follow each other
// that the bench cannot do, and why; without an error there is none.
func (p *Prep) FirstImpossible(r *Route) (step int, err error) {
	c := p.newCompiler(r)
	for i := range r.Steps {
		if err := c.checkedStep(i); err != nil {
			return i, err
		}
	}
	return 0, nil
}

// Unfinished says with what a route ends that makes no finished solution: "an aliquot". It is
// "" for one that does.
func (r *Route) Unfinished() string {
	last := len(r.Steps) - 1
	switch {
	case last < 0:
		return nothing.String()
	case r.Finished(last):
		return ""
	}
	return r.Steps[last].Verb.Traits().then.String()
}

// thenToAMark reports whether what receives the liquid of step i is then made up
// to a mark, or to a mass.
func (r *Route) thenToAMark(i int) bool {
	for _, s := range r.Steps[i+1:] {
		if g := s.Verb.Traits(); g.then == solid || g.then == aliquot && g.brings == aPart {
			continue
		}
		return s.Verb.Traits().Fills
	}
	return false
}

// usedBefore reports whether a step before used the same piece, or may have: its
// instrument is not known.
func (r *Route) usedBefore(i int) bool {
	for _, s := range r.Steps[:i] {
		if s.Measure == nil && s.Balance == nil && s.Verb.Traits().Instrument != "" {
			return true
		}
		if s.Measure != nil && s.piece() == r.Steps[i].piece() {
			return true
		}
	}
	return false
}
