package figure

import (
	"math"
	"slices"

	"gonum.org/v1/plot/vg"

	"minim/report/words/picture"
)

// draw draws from the top downwards.
func (o *oneResult) draw(on *sheet) {
	y := on.writeLines(smallBold, oneEdge, oneHigh-1-smallBold.Font.Size, o.title)
	on.writeLines(smallInk, oneEdge, y, o.stated)
	bottom := 2 + oneLines*leading*smallInk.Font.Size + oneBar + 2
	o.drawDots(on, bottom+12, y-3)
	o.drawTicks(on, bottom+12)
	o.drawShares(on, bottom)
}

// drawDots draws the band and the dots between two heights.
func (o *oneResult) drawDots(on *sheet, bottom, top vg.Length) {
	l, target := limitsOf(o.c), o.c.Prep.Target.Value
	if len(o.c.Prep.Tolerances) > 0 {
		on.box(shaded, o.x(l.Lower), bottom, max(o.x(l.Upper), o.x(l.Lower)+1), top)
	}
	values := hundred(&o.c.Results[0])
	stacks, tallest := stack(o.held(values), o.window)
	rise := min(oneDot, (top-9-bottom-oneDot)/vg.Length(max(tallest-1, 1)))
	var inside, outside, empty []vg.Point
	for i, v := range o.held(values) {
		at := vg.Point{X: oneEdge + oneDot*(0.5+vg.Length(int(o.window.at(v)))), Y: bottom + oneDot/2 + rise*vg.Length(stacks[i])}
		switch {
		case values[i] <= 0:
			empty = append(empty, at)
		case l.Permits(values[i]):
			inside = append(inside, at)
		default:
			outside = append(outside, at)
		}
	}
	radius := 0.45 * min(oneDot, max(rise, 0.6*oneDot))
	on.discs(inside, radius)
	on.rings(outside, radius)
	on.crosses(empty, radius)
	for _, v := range ends(l) {
		on.line(limitLine, o.x(v), bottom, o.x(v), top)
	}
	on.line(targetLine, o.x(target), bottom, o.x(target), top)
	o.nameBand(on, top-8)
}

// held are values drawn into the window, which all but holds them.
func (o *oneResult) held(values []float64) []float64 {
	w, list := o.window, slices.Clone(values)
	for i, v := range list {
		list[i] = math.Min(math.Max(v, w.low+w.step/4), w.high()-w.step/4)
	}
	return list
}

// nameBand says what the band and the line in it are, where there is room.
func (o *oneResult) nameBand(on *sheet, y vg.Length) {
	l, target := limitsOf(o.c), o.x(o.c.Prep.Target.Value)
	from, to, room := o.x(l.Lower), o.x(l.Upper), oneEdge
	inside, aim := smallInk.Width(picture.Labels.InShort)+6, smallInk.Width(picture.Labels.Target)+3
	if len(o.c.Prep.Tolerances) > 0 {
		switch {
		case target-from > inside:
			on.write(smallInk, left, from+3, y, picture.Labels.InShort)
		case to-target > inside+aim:
			on.write(smallInk, right, to-3, y, picture.Labels.InShort)
			room += inside
		}
	}
	if oneWide-target-room > aim {
		on.write(smallInk, left, target+3, y, picture.Labels.Target)
	}
}

// drawTicks draws the axis of strengths, with its unit at the last of its marks.
func (o *oneResult) drawTicks(on *sheet, y vg.Length) {
	w := o.window
	power, prefix := scaleOf(math.Max(math.Abs(w.low), math.Abs(w.high())))
	on.line(axisLine, oneEdge, y, oneWide-oneEdge, y)
	unit := prefix + o.c.Prep.Target.Unit.Name
	free := oneWide - oneEdge - smallInk.Width(clean(unit)) - 6
	for _, t := range from(0, fitting(w.low/power, w.high()/power, oneWide-2*oneEdge)) {
		x := o.x(t.value * power)
		on.line(axisLine, x, y, x, y-2)
		if half := smallInk.Width(t.label) / 2; x-half >= oneEdge && x+half <= free {
			on.write(smallInk, centre, x, y-9.5, t.label)
		}
	}
	on.write(smallInk, right, oneWide-oneEdge, y-9.5, unit)
}

// drawShares draws the bar of shares, and below it what its letters stand for.
func (o *oneResult) drawShares(on *sheet, top vg.Length) {
	whole := 0.0
	for _, p := range o.Portions {
		whole += math.Max(0, p.Part)
	}
	x, y := oneEdge, top-oneBar
	for i, p := range o.Portions {
		if p.Part <= 0 {
			continue
		}
		wide := (oneWide - 2*oneEdge) * vg.Length(p.Part/whole)
		on.portion(i, x, y, x+wide, y+oneBar)
		if wide > 9 {
			on.box(paper, x+wide/2-3.2, y+0.6, x+wide/2+3.2, y+oneBar-0.6)
			on.write(smallBold, centre, x+wide/2, y+1.6, picture.Letter(i))
		}
		x += wide
	}
	for r, row := range o.key {
		for k, item := range row {
			at := oneEdge + vg.Length(k)*(oneWide-2*oneEdge)/2
			base := y - 8.5 - vg.Length(r)*leading*smallInk.Font.Size
			on.write(smallBold, left, at, base, picture.Letter(2*r+k))
			on.write(item.style, left, at+9, base, item.words)
		}
	}
}

// portion fills a box with the shade of the i-th share, a dark one beside a light one. Hatched is
// what is assumed in a budget and what is left over in a vessel, and so nothing here.
func (s *sheet) portion(i int, x0, y0, x1, y1 vg.Length) {
	switch i {
	case 0:
		s.box(blue, x0, y0, x1, y1)
	case 1:
		s.box(vesselBlue, x0, y0, x1, y1)
	case 2:
		s.box(soft, x0, y0, x1, y1)
	case 3:
		s.box(faint, x0, y0, x1, y1)
	case 4:
		s.box(shaded, x0, y0, x1, y1)
	default:
		s.box(paper, x0, y0, x1, y1)
	}
	s.inlay(axisLine, x0, y0, x1, y1)
}
