package words

import (
	"fmt"

	"minim/equipment/quantity"
	"minim/uncertainty/route"
)

// ventedCap closes what gives off gas.
const ventedCap = "vented cap, never tight"

// mixed says how what is in a bottle is mixed and closed after a step that adds to it.
func (b *sheetBench) mixed(i int) string {
	o := b.order(i)
	if o.IntoSolvent && i != o.Last {
		return "" // it is swirled, and closed after the last
	}
	until := b.until(i)
	pour := when(o.Bath && !b.isWeighed(o), fmt.Sprintf("pour it into dry bottle %d, without rinsing; ", b.bottle[i]))
	switch {
	case o.Gas:
		return fmt.Sprintf("; swirl it, open, in a fume cupboard, until %s; %sthen a %s", quantity.Series(append(until, "no more gas is seen"), "and"), pour, ventedCap)
	case len(until) == 0:
		return "; close, shake"
	case o.IntoSolvent:
		return fmt.Sprintf("; when %s: %sclose, shake", until[0], pour)
	}
	return "; close, shake until " + until[0]
}

// until are the conditions for closing a bottle, but for gas. What went into the solvent is
// dissolved already, and on a balance it is cold as well.
func (b *sheetBench) until(i int) []string {
	switch o := b.order(i); {
	case o.IntoSolvent && b.isWeighed(o):
		return nil
	case o.IntoSolvent:
		return []string{"it is at room temperature"}
	case !b.prep().Solute.Fluid() && (b.soluteBefore(i) || b.route.Steps[i].Verb == route.AddSolute):
		return []string{"no solid is left"}
	}
	return nil
}

// makeUp says with what is made up, when, and how it is mixed and kept.
func (b *sheetBench) makeUp(i int) string {
	s := &b.route.Steps[i]
	return b.fill(i) + "; write; " + b.kept(i) + when(emptyFor(b.route, i) != "", fmt.Sprintf("; rinse the %s to waste, let it drain", instrument(s)))
}

// fill says how a mark is reached.
func (b *sheetBench) fill(i int) string {
	s, o := &b.route.Steps[i], b.order(i)
	to := fmt.Sprintf("%s to %s in the %s", b.prep().Solvent.Name, measured(s), instrument(s))
	ready := "at room temperature" + when(o.Gas, ", when no more gas is seen")
	switch {
	case o.IntoSolvent && o.Bath:
		return fmt.Sprintf("%s, pour it into the %s, rinse the beaker into it twice with a little %s, then %s", ready, instrument(s), b.prep().Solvent.Name, to)
	case o.IntoSolvent:
		return ready + ", " + to
	case o.Gas:
		return to + ", in portions, swirling, open, in a fume cupboard; to the mark only when no more gas is seen"
	case i > 0 && b.route.Steps[i-1].Measure != nil:
		return fmt.Sprintf("%s, where %s already is", to, measured(&b.route.Steps[i-1]))
	}
	return to
}

// kept says how what was made up is mixed and comes into its bottle.
func (b *sheetBench) kept(i int) string {
	bottle := b.bottle[i]
	switch {
	case b.order(i).Gas:
		return fmt.Sprintf("do not close or invert it: pour it into dry bottle %d and swirl it there, open, in a fume cupboard, until it is even and no more gas is seen; then a %s", bottle, ventedCap)
	case b.route.Steps[i].Measure.Kind.Traits().Stopper:
		return fmt.Sprintf("close, turn over ten times, pour into dry bottle %d, close", bottle)
	}
	return fmt.Sprintf("pour into dry bottle %d and back, twice; close", bottle)
}

// gas reports whether anything on the bench gives off gas.
func (b *sheetBench) gas() bool { return b.anyOrder(func(o *route.Order) bool { return o.Gas }) }

func (b *sheetBench) anyOrder(has func(o *route.Order) bool) bool {
	for i := range b.orders {
		if has(b.order(i)) {
			return true
		}
	}
	return false
}
