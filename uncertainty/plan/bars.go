package plan

import (
	"cmp"
	"math"
	"slices"
	"sort"
)

// bar is the greatest relative variance that a route may have which leaves over so
// much or more, and the strengths that it may have: with others, it is beaten. With
// an infinitely negative variance, every route is.
type bar struct {
	leftOver, most float64
	strengths      span
}

// setBars works out the bars of the stairs. Those with fewer operations hold for
// all with more as well. Of a stair that has the greatest worth there is, what
// leaves over more is beaten whatever its variance.
func (f *front) setBars() {
	f.bars = make([][]bar, len(f.stairs), len(f.stairs)+1)
	var below []bar
	for n, stairs := range f.stairs {
		own := slices.Clone(below)
		for i := range stairs {
			s := &stairs[i]
			own = append(own, bar{s.leftOver, s.most, s.strengths})
			if s.top {
				own = append(own, bar{s.leftOver + 2*slack, math.Inf(-1), s.strengths})
				below = append(below, bar{s.leftOver, math.Inf(-1), s.strengths})
			} else {
				below = append(below, bar{s.leftOver, s.most, s.strengths})
			}
		}
		f.bars[n] = lowest(own)
	}
	f.bars = append(f.bars, lowest(below))
}

// lowest sorts bars by left over and keeps those that are lower than all before.
func lowest(bars []bar) []bar {
	slices.SortFunc(bars, func(a, b bar) int { return cmp.Or(cmp.Compare(a.leftOver, b.leftOver), cmp.Compare(a.most, b.most)) })
	kept := bars[:0]
	for _, b := range bars {
		if len(kept) == 0 || b.most < kept[len(kept)-1].most {
			kept = append(kept, b)
		}
	}
	return kept
}

// barsFor are the bars for routes with so many operations.
func (f *front) barsFor(operations int) []bar {
	if len(f.bars) == 0 {
		return nil
	}
	return f.bars[min(operations, len(f.bars)-1)]
}

// beatsAll reports whether all routes with at least so many operations, left over
// and relative variance are beaten.
func (f *front) beatsAll(operations int, leftOver, leastVariance float64) bool {
	bars := f.barsFor(operations)
	at := barAt(bars, leftOver)
	return at >= 0 && leastVariance > bars[at].most
}

// barAt is the place of the last bar with no more left over than that, -1 without
// one.
func barAt(bars []bar, leftOver float64) int {
	return sort.Search(len(bars), func(i int) bool { return bars[i].leftOver > leftOver }) - 1
}
