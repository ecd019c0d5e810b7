package figure

import (
	"slices"

	"gonum.org/v1/plot/vg"

	"minim/uncertainty"
	"minim/uncertainty/route"
)

const (
	// dot is the diameter of a dot with the gap beside it.
	dot       = vg.Length(3.6)
	dotRadius = 0.45 * dot
	// stackHeight is the room for the dots of a row, pileHigh the number of
	// dots above each other in a pile, which stands pileGap beyond the edge.
	stackHeight = rowHeight - 8
	pileHigh    = 9
	pileGap     = vg.Length(5)
)

// row is a route with the places of its hundred dots, in points from the left
// end and the ground of the panel.
type row struct {
	result                 *route.Result
	inside, outside, empty []vg.Point
	// below and above count the dots beyond the edges of the window, weak and
	// strong those outside the tolerance.
	below, above, weak, strong int
	none                       bool
}

func newRow(c *route.Comparison, r *route.Result, w window) *row {
	row := &row{result: r}
	limits := limitsOf(c)
	values := hundred(r)
	stacks, tallest := stack(values, w)
	rise := min(dot, (stackHeight-dot)/vg.Length(max(tallest-1, 1)))
	for _, v := range slices.Backward(values) {
		// From the middle outwards, so that piles grow away from the panel.
		if v < w.low {
			row.place(limits, v, pile(row.below, -1))
			row.below++
		}
	}
	for i, v := range values {
		switch {
		case v < w.low:
		case v >= w.high():
			row.place(limits, v, pile(row.above, 1))
			row.above++
		default:
			x := dot * (0.5 + vg.Length(int(w.at(v))))
			row.place(limits, v, vg.Point{X: x, Y: dot/2 + rise*vg.Length(stacks[i])})
		}
	}
	return row
}

// stack returns how many values before each share its bin, and the size of the
// largest heap.
func stack(values []float64, w window) (under []int, tallest int) {
	under = make([]int, len(values))
	var heaps [bins + 1]int
	for i, v := range values {
		if v < w.low || v >= w.high() {
			continue
		}
		bin := int(w.at(v))
		under[i] = heaps[bin]
		heaps[bin]++
		tallest = max(tallest, heaps[bin])
	}
	return under, tallest
}

// pile is the place of the n-th dot beyond an edge of the panel: -1 left, 1 right.
func pile(n int, side vg.Length) vg.Point {
	edge := vg.Length(0)
	if side > 0 {
		edge = bins * dot
	}
	column, level := vg.Length(n/pileHigh), vg.Length(n%pileHigh)
	return vg.Point{X: edge + side*(pileGap+dot*(column+0.5)), Y: dot * (level + 0.5)}
}

func (r *row) place(l uncertainty.Limits, v float64, at vg.Point) {
	switch {
	case v <= 0:
		r.empty = append(r.empty, at)
		r.none = true
	case l.Permits(v):
		r.inside = append(r.inside, at)
	default:
		r.outside = append(r.outside, at)
	}
	switch {
	case v < l.Lower:
		r.weak++
	case v > l.Upper:
		r.strong++
	}
}
