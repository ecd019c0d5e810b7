package search

import (
	"container/heap"
	"math"
	"slices"
	"sort"

	"minim/uncertainty/route"
)

// mostEnds are looked at to find what was not tried leaves over.
const mostEnds = 1 << 17

// untried is the least that a route of the pass may leave over which leaves over so much or more with
// its last solution, and that no route which was found beats; infinite where each is beaten. The end of a route
// leaves over no less than its table of what is to come says; that with the least is looked at next, with each dilution in
// front of it, until that is a whole route, or so many were looked at.
func (s *search) untried(from float64) float64 {
	w := s.newWalk(0)
	w.known = s.front
	switch {
	case s.pass.from == route.Weigh && w.wanted()*s.prep.Volume > w.mostWeighed:
		return math.Inf(1)
	case s.pass.dilutions == 0:
		a := w.ahead()
		return a.leastLeft(s.pass.remainder.of[0][0], s.prep.Volume, w.volumes.least, nil)
	}
	var open ends
	for looked := w.lookBehind(&open, s.prep.Volume, from); len(open) > 0; {
		if looked >= mostEnds || len(open[0].groups) == s.pass.dilutions {
			return open[0].atLeast
		}
		w.volumes = heap.Pop(&open).(end).volumes
		looked += w.lookBehind(&open, w.volumes.groups[len(w.volumes.groups)-1].aliquot, 0)
	}
	return math.Inf(1)
}

// end of routes, with what all of them leave over at the least that are not beaten.
type end struct {
	volumes
	atLeast float64
}

// ends are a heap with that on top which may leave least over.
type ends []end

func (e ends) Len() int           { return len(e) }
func (e ends) Less(i, j int) bool { return e[i].atLeast < e[j].atLeast }
func (e ends) Swap(i, j int)      { e[i], e[j] = e[j], e[i] }
func (e *ends) Push(x any)        { *e = append(*e, x.(end)) }
func (e *ends) Pop() any {
	last := len(*e) - 1
	x := (*e)[last]
	*e = (*e)[:last]
	return x
}

// lookBehind puts each dilution in front of what there is which makes at least what is needed, and leaves over so much
// or more; it returns how many it looked at.
func (w *walk) lookBehind(open *ends, needed, from float64) (looked int) {
	before, list := w.volumes, w.pass.dilutionGroups
	for at := w.firstOf(list, needed); at < len(list); at++ {
		g := &list[at]
		w.volumes = before
		w.volumes.leftOver = Volume(before.leftOver + g.volume - needed)
		if w.tooMuch() {
			break
		}
		if w.volumes.leftOver < from-slack {
			continue
		}
		looked++
		if least := w.behind(g); !math.IsInf(least, 1) {
			heap.Push(open, end{w.volumes, least})
		}
	}
	w.volumes = before
	return looked
}

// behind puts a dilution in front of what there is, and returns what routes then leave over at the least.
func (w *walk) behind(g *group) float64 {
	a, v := w.ahead(), &w.volumes
	v.least += g.least + w.gapTo(g)
	v.ratio *= g.ratio
	v.expected = v.expected.times(g.expected)
	v.groups = append(slices.Clone(v.groups), g)
	if w.outOfReach(a.toCome) || w.pass.from == route.Weigh && (w.wanted() > w.strongest || w.wanted()*g.aliquot > w.mostWeighed) {
		return math.Inf(1)
	}
	var with *leasts
	if w.pass.free != nil {
		v.with = v.with.plus(&g.with)
		with = &v.with
	}
	return a.leastLeft(w.pass.remainder.of[a.toCome][0], g.aliquot, v.least, with)
}

// leastLeft is the least of all left over at which not all routes are beaten of which so much is needed, as in
// beaten; infinite where that is more than allowed.
func (a *ahead) leastLeft(table []float64, needed, least float64, with *leasts) float64 {
	r, most, cell := a.pass.remainder, a.most, a.pass.remainder.strengths.of(a.wanted())
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
			if left <= up && left <= a.mostLeftOver {
				return left
			}
		}
		if at+1 >= len(a.bars) || up > a.mostLeftOver {
			return math.Inf(1)
		}
		from, most = up, a.bars[at+1].most
	}
}
