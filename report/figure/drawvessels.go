package figure

import (
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"minim/report/words/picture"
)

var (
	// vesselLine is the wall of a vessel, wantedLine that of the one that is wanted, arrowLine the
	// way into one.
	vesselLine = draw.LineStyle{Color: ink, Width: 0.9}
	wantedLine = draw.LineStyle{Color: ink, Width: 2}
	arrowLine  = draw.LineStyle{Color: soft, Width: 0.9}
)

func (v *vessels) draw(on *sheet, top vg.Length) {
	y := on.writeLines(boldTitle, rowEdge, top-2-boldTitle.Font.Size, v.title)
	on.writeLines(smallText, rowEdge, y+boldTitle.Font.Size-smallText.Font.Size, v.wanted)
	top -= v.headHeight()
	for _, row := range v.rows {
		x := rowEdge
		for _, c := range row.list {
			v.drawCell(on, c, x, top)
			x += v.cell
		}
		top -= row.high + rowGap
	}
	on.writeLines(smallText, rowEdge, top-smallText.Font.Size+rowGap, v.notes)
}

// drawCell draws the way into a vessel and the vessel, with their words, from x and below top.
func (v *vessels) drawCell(on *sheet, c vesselCell, x, top vg.Length) {
	from := x + v.cell - vesselWide
	high := max(vesselHigh, linesHigh(smallInk, len(c.in))+10)
	bottom := top - high
	middle := bottom + vesselHigh/2
	words := linesHigh(smallInk, len(c.in))
	y := middle + 4 + words - smallInk.Font.Size
	for _, line := range c.in {
		on.write(smallInk, centre, (x+from)/2, y, line)
		y -= leading * smallInk.Font.Size
	}
	on.arrow(x+4, from-4, middle)
	on.vessel(c.Vessel, from, bottom)
	y = bottom - 3
	for _, p := range c.below {
		for _, line := range p.lines {
			y -= leading * p.style.Font.Size
			on.write(p.style, right, x+v.cell, y+2, line)
		}
	}
}

// arrow points to the right.
func (s *sheet) arrow(from, to, y vg.Length) {
	s.line(arrowLine, from, y, to-3, y)
	s.FillPolygon(soft, []vg.Point{{X: to, Y: y}, {X: to - 5, Y: y + 2.5}, {X: to - 5, Y: y - 2.5}})
}

// vessel draws one that is filled: what goes on full, what is left over hatched on top of it.
func (s *sheet) vessel(v *picture.Vessel, x, y vg.Length) {
	line := vesselLine
	if v.Last {
		line = wantedLine
	}
	level := fullTo * vesselHigh
	on := level * vg.Length(1-v.Stays)
	s.box(vesselBlue, x, y, x+vesselWide, y+on)
	if v.Stays > 0 {
		s.hatch(hatchLine, x, y+on, x+vesselWide, y+level)
		s.line(vesselLine, x, y+on, x+vesselWide, y+on)
	}
	s.line(vesselLine, x, y+level, x+vesselWide, y+level)
	s.StrokeLines(line, []vg.Point{{X: x, Y: y + vesselHigh}, {X: x, Y: y}, {X: x + vesselWide, Y: y}, {X: x + vesselWide, Y: y + vesselHigh}})
}
