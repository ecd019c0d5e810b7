package figure

import (
	"image/color"
	"math"
	"slices"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// area is a rectangle on the paper.
type area struct{ x0, y0, x1, y1 vg.Length }

func (a area) meets(b area) bool { return a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1 }

func (a area) holds(p vg.Point) bool { return p.X > a.x0 && p.X < a.x1 && p.Y > a.y0 && p.Y < a.y1 }

// nearest is the point of the area that is nearest to another.
func (a area) nearest(p vg.Point) vg.Point {
	return vg.Point{X: min(max(p.X, a.x0), a.x1), Y: min(max(p.Y, a.y0), a.y1)}
}

func squareRound(at vg.Point, r vg.Length) area { return area{at.X - r, at.Y - r, at.X + r, at.Y + r} }

func distance(a, b vg.Point) vg.Length {
	return vg.Length(math.Hypot(float64(a.X-b.X), float64(a.Y-b.Y)))
}

// placer finds places for words, one after the other, that cover nothing.
type placer struct {
	within area
	// taken areas are covered neither by words nor, if it can be helped, by the
	// line that leads to them; lines only by words.
	taken, lines []area
	// named points have names of their own, or could have.
	named []vg.Point
}

// follow keeps words off a line.
func (p *placer) follow(from, to vg.Point) {
	const step, half = 4, 1.5
	n := math.Ceil(float64(distance(from, to)) / step)
	for i := 0.0; i <= n; i++ {
		p.lines = append(p.lines, squareRound(along(from, to, i/math.Max(n, 1)), half))
	}
}

func along(from, to vg.Point, share float64) vg.Point {
	return from.Add(to.Sub(from).Scale(vg.Length(share)))
}

// place finds the place of that size nearest to a point and takes it; at the
// right of the point and level with it before others. It returns false when none
// is free within reach.
func (p *placer) place(at vg.Point, wide, high, reach vg.Length) (area, bool) {
	for r := min(24, reach); ; r = min(2*r, reach) {
		if best, found := p.search(at, wide, high, r); found {
			p.taken = append(p.taken, best)
			return best, true
		}
		if r == reach {
			return area{}, false
		}
	}
}

// search tries the places within reach, on a grid.
func (p *placer) search(at vg.Point, wide, high, reach vg.Length) (best area, found bool) {
	const step = 2
	least := vg.Length(math.Inf(1))
	for dy := -reach - high; dy <= reach; dy += step {
		for dx := -reach - wide; dx <= reach; dx += step {
			a := area{at.X + dx, at.Y + dy, at.X + dx + wide, at.Y + dy + high}
			far := distance(at, a.nearest(at))
			if far > reach || far >= least {
				continue
			}
			if cost := far + p.awkward(at, a); cost < least && p.free(a) {
				if cost += p.crossed(at, a); cost < least {
					best, least, found = a, cost, true
				}
			}
		}
	}
	return best, found
}

// awkward is how much farther words count at the left, above or below, and next to
// another point that they could be taken for the name of.
func (p *placer) awkward(at vg.Point, a area) (cost vg.Length) {
	if a.x0 < at.X {
		cost += 3
	}
	const apart = 18
	for _, other := range p.named {
		if far := distance(other, a.nearest(other)); other != at && far < apart {
			cost += 2 * (apart - far)
		}
	}
	off := (a.y0+a.y1)/2 - at.Y
	return cost + 0.1*max(off, -off)
}

// crossed is how far crossing what is taken, on the way to the words, counts.
func (p *placer) crossed(at vg.Point, a area) (cost vg.Length) {
	const step = 3
	end := a.nearest(at)
	for far := vg.Length(leaderGap); far < distance(at, end); far += step {
		on := along(at, end, float64(far/distance(at, end)))
		for _, t := range p.taken {
			if t.holds(on) {
				cost += 10
			}
		}
	}
	return cost
}

func (p *placer) free(a area) bool {
	if a.x0 < p.within.x0 || a.x1 > p.within.x1 || a.y0 < p.within.y0 || a.y1 > p.within.y1 {
		return false
	}
	return !slices.ContainsFunc(p.taken, a.meets) && !slices.ContainsFunc(p.lines, a.meets)
}

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
func (l *label) add(h hand, style textStyle, width vg.Length, most int, words string) {
	l.parts = append(l.parts, paragraph{style, h.wrap(style, width, most, words)})
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
func (l *label) place(p *placer, reach vg.Length) (found bool) {
	wide, high := l.size()
	l.at, found = p.place(l.point, wide, high, reach)
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
