package search

import (
	"math"
	"slices"
	"sort"

	"minim/uncertainty/mixture"
	"minim/uncertainty/route"
)

// build chooses the instruments for the volumes of a route that starts with a first
// solution, or with a stock from which so much is needed.
func (w *walk) build(first *group, needed float64) {
	bar := w.bar()
	part := w.begins(first)
	begin := w.leastBegin(first)
	source := begin - float64(part*first.least)
	if least := w.volumes.least + begin; least > bar || w.pass.hasFirst() && least+float64(part*w.gapTo(first)) > bar {
		return
	}
	with := first.with.times(part)
	if need := w.pass.need(); need != 0 && w.volumes.with.plus(&with)[need]+source > bar {
		return
	}
	n := len(w.volumes.groups)
	w.rests[n+1] = ofNone(source)
	w.rests[n] = w.rests[n+1].plus(&with)
	for at := n - 1; at > 0; at-- {
		w.rests[at] = w.rests[at+1].plus(&w.volumes.groups[at].with)
	}
	w.choose(0, first, needed, 0, bar)
}

// choose tries all ways for the dilutions from number at on, where those before have used the
// piece that is free in some ways.
func (w *walk) choose(at int, first *group, needed float64, has cover, bar float64) {
	g, last := first, at == len(w.volumes.groups)
	if !last {
		g = w.volumes.groups[at]
	} else if !w.pass.hasFirst() {
		w.fill(nil, needed)
		return
	}
	have, need, rest, part := w.state.leastVariance(), w.pass.need(), &w.rests[at+1], 1.0
	if last {
		part = w.begins(first)
	}
	before := w.state.save()
	for i := range g.ways {
		d := &g.ways[i]
		least := have + float64(part*d.least)
		if least+rest[0] > bar*(1+slack) || w.err != nil {
			return
		}
		if least+rest[need&^(has|d.cover)] > bar*(1+slack) || w.uses.refuses(d.making, w.pass.free) {
			continue
		}
		if w.counts.tried++; !w.mayGoOn() {
			return
		}
		w.put(d.making)
		if last {
			w.fill(d.making, needed)
		} else {
			w.choose(at+1, first, needed, has|d.cover, bar)
		}
		w.takeBack(d.making, before)
	}
}

// put puts a way to make a solution in front of the route.
func (w *walk) put(m *making) {
	if m.dissolves() {
		w.state.multiply(&factor{mean: m.mean}) // the rest once its solute is known
	} else {
		w.state.multiply(&m.factor)
	}
	w.ways = append(w.ways, m)
	w.uses.add(m, 1)
}

func (w *walk) takeBack(m *making, before saved) {
	w.uses.add(m, -1)
	w.ways = w.ways[:len(w.ways)-1]
	w.state.restore(before)
}

// fill finishes routes with all sources: so much is needed of a stock, or made of a
// first solution. Of sources that are fixed it looks at those alone that bring the strength
// near enough to the target.
func (w *walk) fill(first *making, needed float64) {
	if w.pass.weighsLast() {
		if w.pass.free == nil || w.uses.bothWays(slices.Index(w.prep.Kit.Measures, w.pass.free)) {
			w.diluteWeighedUp()
		}
		return
	}
	list, within := w.pass.sources, w.strengths()
	at, sifts := 0, w.pass.reach != nil && !first.dissolves()
	if sifts {
		at = sort.Search(len(list), func(i int) bool { return list[i].mean*w.state.mean >= within.low*(1-slack) })
	}
	for ; at < len(list); at++ {
		s := list[at]
		if sifts && s.mean*w.state.mean > within.high*(1+slack) {
			return
		}
		if !w.goOn() {
			return
		}
		if !w.fits(s) || w.tooStrong(s) {
			continue
		}
		c := chain{source: s, ways: w.ways}
		switch s.verb() {
		case route.Start:
			if s.intended*needed <= w.mostSolute && needed <= s.volume*(1+slack) {
				w.finish(c, &s.factor)
			}
		case route.UsePacket, route.Measured:
			if s.intended <= w.mostSolute && (s.by == nil || s.filled < first.volume*(1-slack)) {
				w.finishWith(c, s.intended, &s.factor, first, needed)
			}
		default:
			w.weigh(c, first, needed)
		}
	}
}

// fits reports whether a route from a source belongs to the pass: no piece but the one that is
// free pulls both ways, and that does.
func (w *walk) fits(s *source) bool {
	free := w.pass.free
	if s.by != nil && s.step.Verb == route.Start && w.pass.dilutions == w.options.Steps {
		return false // it is a dilution itself
	}
	if s.by == nil {
		return free == nil || w.uses.bothWays(slices.Index(w.prep.Kit.Measures, free))
	}
	k, made := s.by.step.Measure, w.uses.made[s.by.place] > 0
	if made && k != free && k.Count <= 1 {
		return false
	}
	return free == nil || made && k == free || w.uses.bothWays(slices.Index(w.prep.Kit.Measures, free))
}

// tooStrong reports whether a solution on the way from a source, but for a stock
// itself, is stronger than may be. With weighed solute that is seen when the volumes
// are chosen.
func (w *walk) tooStrong(s *source) bool {
	if s.isWeighed() {
		return false
	}
	strength := s.intended
	for i := len(w.ways) - 1; i >= 0; i-- {
		if strength *= w.ways[i].ratio; strength > w.strongest {
			return true
		}
	}
	return false
}

// weigh finishes a route with the reading that comes nearest to the target.
func (w *walk) weigh(c chain, first *making, needed float64) {
	grams := w.wanted() * first.volume / w.solvent
	if !w.several && !w.sourceBound.mixed && !first.dissolves() && w.hopeless((w.state.variance()+w.sourceBound.at(grams))*(1-slack)) {
		return
	}
	weighed, err := w.weighings[c.source].nearest(grams)
	switch {
	case err != nil:
		w.err = err
	case weighed.possible && weighed.reading <= w.mostSolute:
		c.reading = weighed.reading
		w.finishWith(c, weighed.reading*c.source.intended, &weighed.factor, first, needed)
	}
}

// finish works a route out and offers it to the front.
func (w *walk) finish(c chain, f *factor) {
	before := w.state.save()
	defer w.state.restore(before)
	w.state.multiply(f)
	w.counts.finished++
	var less float64
	if w.several && !w.hopeless(w.state.leastVariance()) {
		less, c.pieces = w.spread(c.source)
	}
	if w.hopeless((w.state.variance() - less) * (1 - slack)) {
		return
	}
	m := w.judge.rated(w.judge.worth(w.state.mean, math.Sqrt(max(0, w.state.variance()-less))), w.volumes.leftOver, w.pass.operations())
	if rest, few := w.state.scatters(w.state.mean, less); len(few) > 0 {
		if at, worth := w.judge.offered(m); w.judge.inside(w.state.mean) && (!worth || w.front.beaten(at)) {
			return // with a scatter that is hardly known it is worth less still
		}
		x := mixture.New(rest, few)
		m = w.judge.rated(w.judge.worthOf(w.state.mean, &x), m.leftOver, m.operations)
	}
	w.offer(m, func() chain {
		c.ways = slices.Clone(c.ways)
		return c
	})
}
