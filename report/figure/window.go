package figure

import (
	"cmp"
	"math"
	"slices"

	"minim/uncertainty"
	"minim/uncertainty/route"
)

// window is the part of the axis of strengths that is drawn, in bins of one dot
// each. A finite limit of the tolerance lies between two bins, so that no dot
// straddles it.
type window struct {
	low, step float64
	// count of the bins.
	count int
}

// bins is the number of dots beside each other in a row of many.
const bins = 70

func (w window) high() float64 { return w.low + float64(w.count)*w.step }

// at is the place of a strength, in bins from the left.
func (w window) at(v float64) float64 { return (v - w.low) / w.step }

// How far the window goes beyond the tolerance, in its half-widths: far enough
// for the route with the least spread, within these bounds.
const (
	leastBeyond = 0.3
	usualBeyond = 1.25
	mostBeyond  = 5
)

// narrowest is the half-width, relative to the target, below which the numbers of a
// computer leave too few places for the bins of a window.
const narrowest = 1e-9

// windowOf chooses the window of a comparison: a few tolerances wide. Routes
// with a much larger spread run out of it, and are counted at its edges.
func windowOf(c *route.Comparison) window {
	target := c.Prep.Target.Value
	best := &c.Results[c.Verdict.Use]
	limits := limitsOf(c)
	low, high := limits.Lower, limits.Upper
	if math.IsInf(high-low, 0) {
		half := best.HoldsWithin * target
		for _, l := range []float64{low, high} {
			if !math.IsInf(l, 0) {
				half = math.Max(half, math.Abs(l-target))
			}
		}
		if half < narrowest*target {
			half = target / 10
		}
		return around(limits, target-2.5*half, target+2.5*half)
	}
	half := (high - low) / 2
	margin := half * beyond(c, limits)
	return around(limits, low-margin, high+margin)
}

// beyond is the width of the window on each side of a two-sided tolerance.
func beyond(c *route.Comparison, l uncertainty.Limits) float64 {
	half := (l.Upper - l.Lower) / 2
	least, most := math.Inf(1), 0.0
	for i := range c.Results {
		if r := &c.Results[i]; r.Possible {
			q := hundred(r)
			outside := math.Max(l.Lower-q[0], q[len(q)-1]-l.Upper) / half
			least, most = math.Min(least, outside), math.Max(most, outside)
		}
	}
	if most <= leastBeyond {
		return leastBeyond
	}
	return min(max(least, usualBeyond), mostBeyond)
}

// around fits bins to a range, with the finite limits between bins.
func around(l uncertainty.Limits, low, high float64) window {
	step := (high - low) / bins
	if !math.IsInf(l.Upper-l.Lower, 0) {
		inside := math.Max(4, math.Round((l.Upper-l.Lower)/step))
		step = (l.Upper - l.Lower) / inside
		return window{l.Lower - step*math.Floor((bins-inside)/2), step, bins}
	}
	edge := low
	switch {
	case !math.IsInf(l.Lower, 0):
		edge = l.Lower
	case !math.IsInf(l.Upper, 0):
		edge = l.Upper
	}
	return window{edge - step*math.Round((edge-low)/step), step, bins}
}

// limitsOf is the first tolerance; without one everything is permitted.
func limitsOf(c *route.Comparison) uncertainty.Limits {
	if len(c.Prep.Tolerances) == 0 {
		return uncertainty.Limits{Lower: math.Inf(-1), Upper: math.Inf(1)}
	}
	return c.Prep.Tolerances[0].Limits
}

// hundred returns the strengths of a hundred batches that stand for all: the
// quantiles at 0.5 %, 1.5 %, … 99.5 %.
func hundred(r *route.Result) []float64 {
	q := make([]float64, 100)
	for i := range q {
		q[i] = r.MonteCarlo.Quantile((float64(i) + 0.5) / 100)
	}
	return q
}

// ranked sorts the results for reading: the best chance first (without a
// tolerance, the least spread), then those that say nothing, then those that
// cannot be done.
func ranked(c *route.Comparison) []*route.Result {
	list := inOrder(c)
	last := func(is bool) int {
		if is {
			return 1
		}
		return 0
	}
	slices.SortStableFunc(list, func(a, b *route.Result) int {
		return cmp.Or(last(!a.Possible)-last(!b.Possible), last(!a.Informative)-last(!b.Informative),
			cmp.Compare(b.Chance(), a.Chance()), cmp.Compare(a.HoldsWithin, b.HoldsWithin))
	})
	return list
}

// windowOn is a window that also holds the one to use whole, wherever it
// lies.
func windowOn(c *route.Comparison) window {
	w, q := windowOf(c), hundred(&c.Results[c.Verdict.Use])
	low, high := math.Min(w.low, q[0]), math.Max(w.high(), q[len(q)-1])
	if low == w.low && high == w.high() {
		return w
	}
	return covering(limitsOf(c), low, high, bins)
}
