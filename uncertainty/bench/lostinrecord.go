package bench

import "minim/uncertainty/route"

// waste is what was thrown away in a step that was done again.
type waste struct {
	// amount in the unit of that of step, the last that it is from.
	amount float64
	step   route.Step
	// parent is the step, from 1, that made the solution of which it is a part; 0 when it
	// is of none.
	parent int
}

// of is the amount in the unit of a step as it was done again. What another verb or
// instrument has wasted cannot be said in it, and is left out.
func (l *waste) of(s *route.Step) float64 {
	if l.step.Verb != s.Verb || unitOf(&l.step) != unitOf(s) || l.step.Stock != s.Stock || l.step.From != s.From {
		return 0
	}
	return l.amount
}

// goBack throws away what was done from a step on. It returns false when that could not
// have been done.
func (w *work) goBack(step int) bool {
	if !w.check(w.route(w.last)) {
		return false
	}
	for i := step - 1; i < len(w.lost); i++ {
		l := &w.lost[i]
		if l.parent >= step { // of what is thrown away as a whole now
			*l = waste{}
		}
		if i < w.last {
			w.throwAway(i, step)
		}
	}
	for _, e := range w.done[min(step-1, len(w.done)):] {
		if e != nil {
			e.Undone = true
		}
	}
	planned := len(w.Planned.Steps)
	keep := min(max(step-1, planned), len(w.steps))
	w.steps, w.done = w.steps[:keep], w.done[:keep]
	for i := step - 1; i < planned; i++ {
		w.steps[i], w.done[i] = w.Planned.Steps[i], nil
	}
	w.last, w.spoilt = step-1, 0
	return true
}

// throwAway adds what a step has cost, from 0, that is thrown away with all from step
// back on, from 1. What is a part of a solution that is thrown away as well costs nothing
// by itself.
func (w *work) throwAway(i, back int) {
	s, l := &w.steps[i], &w.lost[i]
	if parent := w.parent(i); parent < back {
		*l = waste{l.of(s) + w.wasted(i), *s, parent}
	}
}

// parent is the step, from 1, that made the solution of which a step takes a part; 0 when
// it is a stock, or the step takes none.
func (w *work) parent(i int) int {
	s, r := &w.steps[i], &route.Route{Steps: w.steps}
	if !s.Verb.Traits().FromSolution {
		return s.From
	}
	for i > 0 && !r.Finished(i-1) {
		i--
	}
	return i
}

// wasted is what a step that is done again has cost: what it measured out or, for one
// that made a solution, the solvent.
func (w *work) wasted(i int) float64 {
	s := &w.steps[i]
	switch {
	case s.Packet != nil:
		return s.Packet.Content.Value
	case s.Verb.Traits().Fills:
		return s.Amount - w.inside(i)
	}
	return s.Amount
}

// inside is what was in a vessel before it was made up, in the unit of what it was made
// up to. Of solute nothing counts: all that it is dissolved in is lost.
func (w *work) inside(i int) (amount float64) {
	for j := i - 1; j >= 0; j-- {
		s := &w.steps[j]
		switch {
		case s.Verb.Traits().FromSolution && s.Balance != nil:
			return s.Amount
		case s.Verb.Traits().FromSolution:
			if unitOf(s) == "mL" {
				amount += s.Amount
			}
		case s.Verb == route.TakeAll:
			return amount + w.left(j)
		default:
			return amount
		}
	}
	return amount
}

// left is what was left of the solution at hand before a step, in mL; 0 of a stock.
func (w *work) left(i int) float64 {
	list, err := w.Prep.Solutions(w.route(i))
	if err != nil || len(list) == 0 {
		return 0
	}
	return list[len(list)-1].LeftML
}
