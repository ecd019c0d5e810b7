package figure

import (
	"math"
	"slices"

	"gonum.org/v1/plot/vg"
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
