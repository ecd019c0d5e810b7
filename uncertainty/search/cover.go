package search

import (
	"math"

	"minim/uncertainty/route"
)

// cover says in which ways the piece that is free to pull both ways is used: taken with, or
// filled or added with.
type cover uint8

const (
	taking cover = 1 << iota
	filling
	cancelling = taking | filling
)

// leasts are the least relative variances of what uses the piece that is free in some ways at
// the least, by these; infinite where nothing does.
type leasts [cancelling + 1]float64

// ofNone is what uses it in no way.
func ofNone(least float64) leasts {
	return leasts{least, math.Inf(1), math.Inf(1), math.Inf(1)}
}

// take takes in another that may serve, which has a cover.
func (l *leasts) take(least float64, has cover) {
	for need := range l {
		if cover(need)&^has == 0 {
			l[need] = min(l[need], least)
		}
	}
}

// times is for what counts so many times as much.
func (l *leasts) times(part float64) (m leasts) {
	for need, least := range l {
		if m[need] = least; !math.IsInf(least, 1) {
			m[need] = float64(part * least)
		}
	}
	return m
}

// plus is for two that follow one another: either has what is needed, or one has one way and the
// other the other.
func (l *leasts) plus(m *leasts) leasts {
	sum := leasts{0: l[0] + m[0]}
	for _, need := range []cover{taking, filling} {
		sum[need] = min(l[need]+m[0], l[0]+m[need])
	}
	sum[cancelling] = min(l[cancelling]+m[0], l[0]+m[cancelling], l[taking]+m[filling], l[filling]+m[taking])
	return sum
}

// coverOf says in which ways a way to make a solution uses the piece that is free.
func (p *pass) coverOf(m *making) (c cover) {
	if p.free == nil {
		return 0
	}
	if m.taken != nil && m.taken.step.Measure == p.free {
		c |= taking
	}
	if m.made.step.Measure == p.free {
		c |= filling
	}
	return c
}

// need is how the ways of each route of the pass use the piece that is free: both ways, but
// where the source may be measured out with it.
func (p *pass) need() cover {
	switch {
	case p.free == nil:
		return 0
	case p.from == route.Measured:
		return filling
	}
	return cancelling
}
