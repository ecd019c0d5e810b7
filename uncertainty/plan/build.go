package plan

import (
	"slices"

	"minim/uncertainty/mixture"
	"minim/uncertainty/route"
)

// build chooses the instruments for the volumes of a route that starts with a first
// solution, or with a stock from which so much is needed.
func (w *walk) build(first *group, needed float64) {
	bar := w.bar()
	rest := w.volumes.least + first.least + w.pass.leastSource(w.bench, w.wanted()*first.volume)
	if rest <= bar {
		w.choose(0, first, needed, rest-w.state.own, bar)
	}
}

// choose tries all ways for the dilutions from number at on, which with the first
// solution and the source bring the variance rest at the least.
func (w *walk) choose(at int, first *group, needed, rest, bar float64) {
	if at == len(w.volumes.groups) {
		w.chooseFirst(first, needed, rest, bar)
		return
	}
	g := w.volumes.groups[at]
	rest -= g.least
	have := w.state.leastVariance(oneWay)
	last := at == len(w.volumes.groups)-1
	for _, d := range g.ways {
		if have+d.least+rest > bar*(1+slack) {
			return
		}
		if w.pass.measured && last && w.measured == 0 && !d.measured {
			continue
		}
		w.with(d.making, func() { w.choose(at+1, first, needed, rest, bar) })
	}
}

// with tries what a way to make a solution leads to.
func (w *walk) with(d *making, then func()) {
	before := w.state.save()
	w.counts.tried++
	if !w.mayGoOn() {
		return
	}
	w.state.multiply(&d.factor)
	w.ways = append(w.ways, d)
	if d.measured {
		w.measured++
	}
	then()
	if d.measured {
		w.measured--
	}
	w.ways = w.ways[:len(w.ways)-1]
	w.state.restore(before)
}

// chooseFirst tries all ways to make the first solution, and all sources.
func (w *walk) chooseFirst(first *group, needed, rest, bar float64) {
	have := w.state.leastVariance(byDilutions)
	if have+rest > bar*(1+slack) {
		return
	}
	if w.pass.from == route.Start {
		w.fill(nil, needed)
		return
	}
	for _, f := range first.ways {
		w.with(f.making, func() {
			if w.state.leastVariance(anyWay) <= bar*(1+slack) {
				w.fill(f.making, needed)
			}
		})
	}
}

// fill finishes routes with all sources: so much is needed of a stock, or made of a
// first solution.
func (w *walk) fill(first *making, needed float64) {
	for i := range w.sources {
		s := &w.sources[i]
		if s.step.Verb != w.pass.from || !w.goOn() {
			continue
		}
		c := chain{source: s, ways: w.ways}
		if w.tooStrong(s) {
			continue
		}
		switch s.step.Verb {
		case route.Start:
			if s.intended*needed <= w.mostSolute && needed <= s.volume*(1+slack) {
				w.finish(c, &s.factor)
			}
		case route.UsePacket:
			if s.intended <= w.mostSolute {
				w.finish(c, &s.factor)
			}
		default:
			w.weigh(c, first.volume)
		}
	}
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
func (w *walk) weigh(c chain, volume float64) {
	weighed, err := w.weighings[c.source].nearest(w.wanted() * volume)
	switch {
	case err != nil:
		w.err = err
	case weighed.possible && weighed.reading <= w.mostSolute:
		c.reading = weighed.reading
		w.finish(c, &weighed.factor)
	}
}

// finish works a route out and offers it to the front.
func (w *walk) finish(c chain, f *factor) {
	before := w.state.save()
	defer w.state.restore(before)
	w.state.multiply(f)
	w.counts.finished++
	m := merit{w.judge.worth(w.state.mean, w.state.uncertainty()), w.volumes.leftOver, w.pass.operations()}
	if rest, few := w.state.scatters(w.state.mean); len(few) > 0 {
		if at, worth := w.judge.offered(m); w.judge.inside(w.state.mean) && (!worth || w.front.beaten(at)) {
			return // with a scatter that is hardly known it is worth less still
		}
		x := mixture.New(rest, few)
		m.worth = w.judge.worthOf(w.state.mean, &x)
	}
	w.offer(m, func() chain {
		c.ways = slices.Clone(c.ways)
		return c
	})
}
