package figure

import (
	"image/color"

	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// label is a few words beside a point of a plane.
type label struct {
	tag   string
	parts []paragraph
	// at is its place, point what it belongs to.
	at    area
	point vg.Point
	// ground is the colour behind it, over the lines of the plane; nil for none.
	ground color.Color
}

// leaderGap is how far from the middle of a point a line to its name begins.
const leaderGap = 8

// leader is the thin line from a point to its name.
var leader = draw.LineStyle{Color: soft, Width: 0.6}

// tagHigh is the height of the word on a dark ground.
const tagHigh = vg.Length(13)

// add puts words into a label, broken into at most so many lines.
func (l *label) add(style text.Style, width vg.Length, most int, words string) {
	l.parts = append(l.parts, paragraph{style, wrap(style, width, most, words)})
}

func (l *label) size() (wide, high vg.Length) {
	const padding = 2
	if l.tag != "" {
		wide, high = l.tagWide(), tagHigh
	}
	for _, p := range l.parts {
		for _, line := range p.lines {
			wide = max(wide, p.style.Width(line))
		}
	}
	return wide + 2*padding, high + heightOf(l.parts) + padding
}

func (l *label) tagWide() vg.Length { return 1.2*tagText.Width(l.tag) + 8 }

// place finds a place for the label and reports whether there is one.
func (l *label) place(p *placer, reach vg.Length) bool {
	wide, high := l.size()
	at, found := p.place(l.point, wide, high, reach)
	l.at = at
	return found
}

// draw writes the label, and a line to its point unless that is next to it.
func (l *label) draw(on *sheet) {
	end := l.at.nearest(l.point)
	if far := distance(l.point, end); far > leaderGap+4 {
		from := along(l.point, end, float64(leaderGap/far))
		on.line(leader, from.X, from.Y, end.X, end.Y)
	}
	if l.ground != nil {
		on.box(l.ground, l.at.x0, l.at.y0, l.at.x1, l.at.y1)
	}
	x, y := l.at.x0+2, l.at.y1
	if l.tag != "" {
		on.box(ink, x, y-tagHigh+1, x+l.tagWide(), y-1)
		on.write(tagText, centre, x+l.tagWide()/2, y-9.5, l.tag)
		y -= tagHigh
	}
	for _, p := range l.parts {
		on.writeLines(p.style, x, y-p.style.Font.Size, p.lines)
		y -= heightOf([]paragraph{p})
	}
}
