package words

import (
	"minim/uncertainty/route"
)

// again is the step, from 1, from which to go on when one was spoilt: itself where it
// measures out and enough is left for that, and else the one that began its solution.
func (b *bench) again(i int) int {
	s := &b.route.Steps[i]
	switch first := b.begin(i); {
	case s.Verb.Traits().FromSolution && !b.enough(i) && first > 0:
		return b.again(first - 1)
	case s.Verb.Traits().BringsSolid && !s.Verb.Traits().AddsTo, b.order(i).First == i && (s.Verb.Traits().FromSolution || s.Verb == route.Measured):
		return i + 1
	case b.route.Steps[first].Verb.Traits().FromSolution:
		return b.again(first)
	default:
		return first + 1
	}
}

// begin is the step, from 0, that begins the solution which a step is part of.
func (b *bench) begin(i int) int {
	for ; i > 0; i-- {
		if b.route.Begins(i) {
			return i
		}
	}
	return 0
}

// enough reports whether what a step takes can be taken once more: a pipette that is not
// emptied is filled to its top line, and some of the solution rinses it.
func (b *bench) enough(i int) bool {
	s := &b.route.Steps[i]
	need := s.Amount
	if s.Measure != nil && s.Measure.Kind.Traits().Filler && s.Measure.Kind.Traits().Scale {
		need = s.Measure.Capacity
	}
	n := b.before(i) // 0: a stock
	return n == 0 || b.solutions[n-1].LeftML >= 1.2*need
}
