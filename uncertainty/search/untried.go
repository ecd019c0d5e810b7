package search

import (
	"math"
	"sort"

	"minim/uncertainty/route"
)

// untried is the least that a route of the pass may leave over which leaves over so much or more with
// its last solution, and that no route which was found beats; infinite where each is beaten. It follows from the
// table of what is to come, in front of each last dilution.
func (s *search) untried(from float64) float64 {
	w, needed, least := s.newWalk(0), s.prep.Volume, math.Inf(1)
	w.known = s.front
	if s.pass.from == route.Weigh && w.wanted()*needed > w.mostWeighed {
		return least
	}
	if s.pass.dilutions == 0 {
		a := w.ahead()
		return a.leastLeft(s.pass.remainder.of[0][0], needed, w.wanted(), w.volumes.least, nil, w.mostLeftOver)
	}
	list := s.pass.dilutionGroups
	for at := sort.Search(len(list), func(i int) bool { return list[i].volume >= needed*(1-1e-9) }); at < len(list); at++ {
		g := &list[at]
		w.volumes.leftOver = Volume(g.volume - needed)
		if w.tooMuch() || w.volumes.leftOver >= least {
			break
		}
		if w.volumes.leftOver >= from-slack {
			least = min(least, w.untriedBehind(g, least))
		}
	}
	return least
}

// untriedBehind is the least that a route with a last dilution leaves over, infinite where that is more than there was.
func (w *walk) untriedBehind(g *group, most float64) float64 {
	strength := w.wanted() / g.ratio
	if w.pass.from == route.Weigh && (strength > w.strongest || strength*g.aliquot > w.mostWeighed) {
		return math.Inf(1)
	}
	a, need, with := w.ahead(), w.pass.need(), (*leasts)(nil)
	before := w.volumes.expected
	w.volumes.expected = before.times(g.expected)
	out := w.outOfReach(a.toCome)
	if w.volumes.expected = before; out {
		return math.Inf(1)
	}
	if need != 0 {
		sum := w.volumes.with.plus(&g.with)
		with = &sum
	}
	return a.leastLeft(w.pass.remainder.of[a.toCome][0], g.aliquot, strength, w.volumes.least+g.least, with, min(most, w.mostLeftOver))
}

// leastLeft is the least of all left over at which not all routes are beaten of which so much is needed, as in
// beaten; infinite where that is more than allowed.
func (a *ahead) leastLeft(table []float64, needed, wanted, least float64, with *leasts, allowed float64) float64 {
	r, most, cell := a.pass.remainder, a.most, a.pass.remainder.strengths.of(wanted)
	first, from := r.volumes.of(needed*(1-slack)), a.volumes.leftOver
	for at := a.at; ; at++ {
		up := math.Inf(1)
		if at+1 < len(a.bars) {
			up = a.bars[at+1].leftOver
		}
		volume := first + sort.Search(r.volumes.count-first, func(i int) bool {
			return least+r.in(table, first+i, cell) <= most && (with == nil || r.with(with, a.pass.need(), a.toCome, first+i, cell) <= most)
		})
		if volume < r.volumes.count {
			left := max(from, a.volumes.leftOver+r.volumes.start(volume)/(1+slack)-needed-slack)
			if left <= up && left <= allowed {
				return left
			}
		}
		if at+1 >= len(a.bars) || up > allowed {
			return math.Inf(1)
		}
		from, most = up, a.bars[at+1].most
	}
}
