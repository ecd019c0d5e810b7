package figure

import (
	"fmt"
	"slices"

	"gonum.org/v1/plot/vg"

	"minim/report/words/picture"
	"minim/uncertainty"
	"minim/uncertainty/route"
)

const (
	// dot is the diameter of a dot with the gap beside it.
	dot       = vg.Length(3.6)
	dotRadius = 0.45 * dot
	// stackHeight is the room for the dots of a row, pileHigh the number of
	// dots above each other in a pile, which stands pileGap beyond the edge.
	stackHeight = rowHeight - 13
	pileHigh    = 9
	pileGap     = vg.Length(5)
	// pileWide is the room for a hundred dots in a pile.
	pileWide = 12 * dot
	// wasHigh is the room for the mark of a route before a change, below its dots.
	wasHigh = vg.Length(5)
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
	heaps := make([]int, w.count+1)
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

// drawRow draws a row whose lower edge stands at the height y.
func (s *spread) drawRow(on *sheet, r *row, y vg.Length) {
	ground := y + 4
	on.line(groundLine, namesFrom, y, rightTo, y)
	if was := s.before[r.result.Route.Name]; was != nil {
		s.drawWas(on, was, y)
		ground += wasHigh
	}
	shift := func(points []vg.Point) []vg.Point {
		moved := make([]vg.Point, len(points))
		for i, p := range points {
			moved[i] = p.Add(vg.Point{X: panelFrom, Y: ground})
		}
		return moved
	}
	on.discs(shift(r.inside), dotRadius)
	on.rings(shift(r.outside), dotRadius)
	on.crosses(shift(r.empty), dotRadius)
	s.drawCounts(on, r, min(ground+dot*pileHigh+2.5, y+s.high-8.5))
	s.drawRowWords(on, r.result, y)
}

// drawWas draws where a route lies on the kit as it is.
func (s *spread) drawWas(on *sheet, was *route.Result, y vg.Length) {
	q := hundred(was)
	at := y + 1 + wasHigh/2
	on.line(wasLine, s.x(q[2]), at, max(s.x(q[97]), s.x(q[2])+1), at)
	on.line(axisLine, s.x(q[50]), at-2, s.x(q[50]), at+2)
	_, chance, _ := picture.Beside(s.c.Prep, was)
	on.write(smallText, right, rightTo, y+3, picture.Labels.Was+chance)
}

// drawCounts writes over the piles at the edges how many dots are too weak and
// too strong; without a tolerance, how many lie beyond the edges.
func (s *spread) drawCounts(on *sheet, r *row, y vg.Length) {
	style, below, above, weak, strong := smallBold, r.weak, r.strong, picture.Labels.TooWeak, picture.Labels.TooStrong
	if len(s.c.Prep.Tolerances) == 0 {
		style, below, above, weak, strong = smallText, r.below, r.above, picture.Labels.Weaker, picture.Labels.Stronger
	}
	if below > 0 {
		on.write(style, right, panelFrom-pileGap, y, fmt.Sprintf("%d %s", below, weak))
	}
	if above > 0 {
		on.write(style, left, panelTo+pileGap, y, fmt.Sprintf("%d %s", above, strong))
	}
}

// drawRowWords writes the name and the spread on the left, the chance and what
// is left over on the right, and frames the route to use.
func (s *spread) drawRowWords(on *sheet, r *route.Result, y vg.Length) {
	name, value := nameText, figures
	if r == &s.c.Results[s.c.Verdict.Use] {
		name, value = boldText, boldFigs
		on.frameRoute(y, y+s.high, s.words.Tag)
	}
	next := on.writeLines(name, namesFrom, y+s.high-17, s.wrap(name, namesWide, 2, r.Route.Name))
	spread := smallText
	if !r.Informative {
		spread = smallBold
	}
	gives, chance, leftOver := picture.Beside(s.c.Prep, r)
	on.writeLines(spread, namesFrom, next, s.wrap(spread, namesWide, 2, gives))
	on.write(value, right, rightTo, y+s.high-24, chance)
	on.write(smallText, right, rightTo, y+s.high-37, leftOver)
}

// highest is how high rows are: higher than usual where a name and what its route gives take two
// lines each.
func (s *spread) highest() vg.Length {
	for _, r := range s.rows {
		gives, _, _ := picture.Beside(s.c.Prep, r.result)
		if len(s.wrap(nameText, namesWide, 2, r.result.Route.Name)) > 1 && len(s.wrap(smallBold, namesWide, 2, gives)) > 1 {
			return rowHeight + 9
		}
	}
	return rowHeight
}

// frameRoute frames the route to use, with a word on the frame.
func (s *sheet) frameRoute(bottom, top vg.Length, words string) {
	s.frame(frameLine, namesFrom-6, bottom, rightTo+6, top)
	wide := 1.2*tagText.Width(words) + 8
	s.box(ink, namesFrom-6, top-5, namesFrom-6+wide, top+6)
	s.write(tagText, centre, namesFrom-6+wide/2, top-2.5, words)
}
