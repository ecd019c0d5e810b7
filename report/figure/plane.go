package figure

import (
	"gonum.org/v1/plot/vg"
)

// The panel of a figure with an axis on two sides, in points.
const (
	planeFrom = margin + 34
	planeHigh = vg.Length(300)
	// underPlane is the room for the axis below a plane, overPlane that for the
	// name of the axis on its left, which stands above it.
	underPlane = vg.Length(34)
	overPlane  = vg.Length(20)
)

// footHeight is the room that paragraphs below a figure take.
func footHeight(list []paragraph) vg.Length { return margin + 6 + heightOf(list) }

// planeFigure lays out a figure that draw draws into a plane which ends at the height top, with
// a heading and a key above it and notes below.
func planeFigure(above *heading, top vg.Length, k *key, notes []paragraph, alt string, draw func(*sheet)) *Figure {
	height := top + overPlane + above.height() + 12 + k.height()
	return &Figure{width: pageWidth, height: height, Alt: clean(alt), paint: func(on *sheet) {
		k.draw(on, above.draw(on, height)-6)
		draw(on)
		on.writeParagraphs(footHeight(notes)-8, notes)
	}}
}

// plane is a panel with a scale along the bottom and one up the left side.
type plane struct {
	x, y           scale
	xTicks, yTicks []tick
}

// setTicks marks both scales.
func (p *plane) setTicks() {
	wide := func(label string) vg.Length { return smallInk.Width(label) + 8 }
	high := func(string) vg.Length { return 11 }
	p.xTicks, p.yTicks = p.marks(p.x, wide), p.marks(p.y, high)
}

func (p *plane) marks(s scale, size func(string) vg.Length) []tick {
	if s.log {
		return s.ticks(size)
	}
	return fitting(s.low, s.high, s.to-s.from)
}

// area is the panel itself.
func (p *plane) area() area { return area{p.x.start(), p.y.from, p.x.to, p.y.to} }

// drawGround draws the lines that lead the eye to the labels.
func (p *plane) drawGround(on *sheet) {
	for _, t := range onlyLabelled(p.xTicks) {
		on.line(groundLine, p.x.at(t.value), p.y.from, p.x.at(t.value), p.y.to)
	}
	for _, t := range onlyLabelled(p.yTicks) {
		on.line(groundLine, p.x.start(), p.y.at(t.value), p.x.to, p.y.at(t.value))
	}
}

// drawAxes draws both axes with their names.
func (p *plane) drawAxes(on *sheet, across, up string) {
	axis{p.x.from, p.x.to, p.x.at}.draw(on, p.y.from, -1, onlyLabelled(p.xTicks), across)
	for _, t := range p.xTicks {
		on.line(axisLine, p.x.at(t.value), p.y.from, p.x.at(t.value), p.y.from-2)
	}
	if p.x.zero {
		p.drawZero(on)
	}
	edge := p.x.start()
	on.line(axisLine, edge, p.y.from, edge, p.y.to)
	for _, t := range p.yTicks {
		y := p.y.at(t.value)
		on.line(axisLine, edge-2, y, edge, y)
		if t.label != "" {
			on.line(axisLine, edge-4, y, edge, y)
			on.write(smallInk, right, edge-6, y-2.8, t.label)
		}
	}
	on.write(smallInk, left, margin, p.y.to+9, up)
}

// drawZero draws the place of 0 before a logarithmic scale, and a break after it.
func (p *plane) drawZero(on *sheet) {
	y, x := p.y.from, p.x.at(0)
	end := p.x.from - 6
	on.line(groundLine, x, y, x, p.y.to)
	on.line(axisLine, p.x.start(), y, end, y)
	on.line(axisLine, x, y, x, y-4)
	on.write(smallInk, centre, x, y-13, "0")
	for _, at := range []vg.Length{end, p.x.from} {
		on.line(axisLine, at-2, y-4, at+2, y+4)
	}
}
