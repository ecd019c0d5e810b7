package words

import (
	"fmt"
	"slices"

	"minim/equipment/quantity"
	"minim/uncertainty/route"
)

// order is how the solution is brought together which a step is part of.
func (b *sheetBench) order(i int) *route.Order { return orderOf(b.orders, i) }

// orderOf is that of a step, or of nothing in particular.
func orderOf(orders []*route.Order, i int) *route.Order {
	if i < len(orders) && orders[i] != nil {
		return orders[i]
	}
	return &route.Order{First: i, Last: i}
}

// isTurned reports whether solvent, or what is weaker, goes in before the first step.
func isTurned(o *route.Order) bool { return o.IntoSolvent && (o.Ahead > 0 || len(o.Early) > 0) }

// isBroughtIn reports whether what a step brings must go into the solvent.
func isBroughtIn(o *route.Order, i int) bool {
	h, brings := o.Parts[i]
	return brings && h.IntoSolvent()
}

// goesIn reports whether what a step brings must go into the solvent, and something is there.
func (b *sheetBench) goesIn(i int) bool {
	o := b.order(i)
	return isBroughtIn(o, i) && (isTurned(o) || i > o.First)
}

// makesMark reports whether a solution is made up to a mark.
func (b *sheetBench) makesMark(o *route.Order) bool {
	return b.route.Steps[o.Last].Verb == route.MakeUpTo
}

// isWeighed reports whether a solution is made up to a total on a balance.
func (b *sheetBench) isWeighed(o *route.Order) bool {
	return b.route.Steps[o.Last].Verb == route.WeighUpTo
}

// vessel is where what a step brings goes: a vessel with a mark, the bottle in which it is
// mixed or a beaker before it comes there.
func (b *sheetBench) vessel(i int) string {
	o := b.order(i)
	if b.ahead(i) != "" && isTurned(o) && b.goesIn(i) && len(o.Early) == 0 {
		return "the " + b.prep().Solvent.Name
	}
	return b.place(o, i == o.First && !isTurned(o))
}

// place is the vessel of a solution, which may be fresh.
func (b *sheetBench) place(o *route.Order, fresh bool) string {
	beaker := o.Bath && !b.isWeighed(o)
	switch {
	case beaker && fresh && b.makesMark(o):
		return "a beaker in a cold bath"
	case beaker && fresh:
		return "a dry beaker in a cold bath"
	case beaker:
		return "the beaker"
	case b.makesMark(o):
		return "the " + instrument(&b.route.Steps[o.Last])
	case fresh:
		return fmt.Sprintf("dry bottle %d", b.bottle[o.Last])
	}
	return fmt.Sprintf("bottle %d", b.bottle[o.Last])
}

// ahead says what goes in before the first step of a solution; "" where nothing does.
func (b *sheetBench) ahead(i int) string {
	o, solvent := b.order(i), b.prep().Solvent.Name
	switch {
	case b.isWeighed(o):
		return b.zeroed(i)
	case i != o.First || !isTurned(o):
		return ""
	case b.makesMark(o):
		return fmt.Sprintf("about %s of %s into %s first; ", quantity.Millilitres(o.Ahead), solvent, b.place(o, true))
	}
	parts := make([]string, len(o.Early))
	for n, k := range o.Early {
		s, what := &b.route.Steps[k], solvent
		if s.Verb == route.Strengthen {
			what = b.strong(s)
		}
		parts[n] = fmt.Sprintf("what step %d measures, %s of %s %s,", k+1, measured(s), what, measuredWith(s))
	}
	return fmt.Sprintf("first put into %s %s and write it there; ", b.place(o, true), quantity.Series(parts, "and"))
}

func (b *sheetBench) isEarly(i int) bool { return slices.Contains(b.order(i).Early, i) }

// already says that what a step adds went in first.
func (b *sheetBench) already(i int, what string) string {
	o := b.order(i)
	return fmt.Sprintf("the %s of %s went into %s first, at step %d%s", measured(&b.route.Steps[i]), what, b.place(o, false), o.First+1, b.mixed(i))
}

// settle says to mix and cool what was brought together, without closing it.
func (b *sheetBench) settle(i int) string {
	return when(b.goesIn(i), either(b.order(i).Gas, "; swirl it, open, in a fume cupboard, and let it cool", "; swirl, let cool"))
}

// outOf is "of strong acid", or "from bottle 1".
func (b *sheetBench) outOf(i int) string {
	return either(b.before(i) > 0, "from "+b.source(i), "of "+b.source(i))
}

// stirred says how the solution is made even that a step takes from.
func (b *sheetBench) stirred(i int) string {
	h, from := b.order(i).Parts[i], b.source(i)
	switch {
	case b.order(i).Gas:
		return fmt.Sprintf("swirl %s, open, in a fume cupboard", from)
	case h.Strong() && !h.Unknown() && b.before(i) == 0:
		return "swirl " + from
	}
	return fmt.Sprintf("turn %s over a few times", from)
}

// again is the step, from 1, from which to go on when one was spoilt: itself where it
// measures out and enough is left for that, and else the one that began its solution.
func (b *sheetBench) again(i int) int {
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
func (b *sheetBench) begin(i int) int {
	for ; i > 0; i-- {
		if b.route.Begins(i) {
			return i
		}
	}
	return 0
}

// enough reports whether what a step takes can be taken once more: a pipette that is not
// emptied is filled to its top line, and some of the solution rinses it.
func (b *sheetBench) enough(i int) bool {
	s := &b.route.Steps[i]
	need := s.Amount
	if s.Measure != nil && s.Measure.Kind.Traits().Filler && s.Measure.Kind.Traits().Scale {
		need = s.Measure.Capacity
	}
	n := b.before(i) // 0: a stock
	return n == 0 || b.solutions[n-1].LeftML >= 1.2*need
}
