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
	rest := w.volumes.least + w.leastBegin(first)
	if rest <= bar {
		w.choose(0, first, needed, rest-w.state.own, bar)
	}
}

// choose tries all ways for the dilutions from number at on, which with the first
// solution and the source bring the variance rest at the least.
func (w *walk) choose(at int, first *group, needed, rest, bar float64) {
	g, last := first, at == len(w.volumes.groups)
	if !last {
		g = w.volumes.groups[at]
		rest -= g.least
	} else if w.pass.from == route.Start {
		w.fill(nil, needed)
		return
	}
	have, part := w.state.leastVariance(), 1.0
	if last {
		part = w.begins(first)
		have -= float64(part * g.least) // which rest still holds
	}
	before := w.state.save()
	for i := range g.ways {
		d := &g.ways[i]
		if have+float64(part*d.least)+rest > bar*(1+slack) || w.err != nil {
			return
		}
		if w.uses.refuses(d.making, w.pass.free) {
			continue
		}
		if w.counts.tried++; !w.mayGoOn() {
			return
		}
		w.put(d.making)
		if last {
			w.fill(d.making, needed)
		} else {
			w.choose(at+1, first, needed, rest, bar)
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
	weighed, err := w.weighings[c.source].nearest(w.wanted() * first.volume / w.solvent)
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
