package search

import (
	"math"

	"minim/uncertainty/portable"
	"minim/uncertainty/route"
)

// span is a range of strengths, or of factors that they are multiplied by.
type span struct{ low, high float64 }

func (s span) times(t span) span { return span{s.low * t.low, s.high * t.high} }

func (s span) meets(t span) bool { return s.low <= t.high*(1+slack) && t.low <= s.high*(1+slack) }

// power is the span of products of so many factors in it.
func (s span) power(n int) span {
	return span{portable.Power(s.low, n), portable.Power(s.high, n)}
}

// around is the least span of all of a list.
func around[T any](list []T, of func(*T) span) span {
	all := span{math.Inf(1), 0}
	for i := range list {
		s := of(&list[i])
		all.low, all.high = min(all.low, s.low), max(all.high, s.high)
	}
	return all
}

// means is what the ways of a group multiply the expected strength by.
func (g *group) means() span {
	return around(g.ways, func(w *groupWay) span { return span{w.mean, w.mean} })
}

// reach is what the sources, and dilutions that are still to come, make of the
// expected strength where the solute is not weighed, but fixed: a stock or a packet.
type reach struct {
	// begins is the concentration that routes start from, dilutes what one dilution
	// makes of it.
	begins, dilutes span
}

// newReach returns nil for a pass from a weighing, of which the mass is chosen last.
func newReach(b *Bench, p *pass) *reach {
	if p.from == route.Weigh || p.weighsLast() {
		return nil
	}
	r := &reach{
		begins:  around(p.sources, func(s **source) span { return span{(*s).mean, (*s).mean} }),
		dilutes: around(p.dilutionGroups, func(g *group) span { return g.expected }),
	}
	if p.from != route.Start {
		r.begins = r.begins.times(around(p.firsts, func(g *group) span { return g.expected }))
	}
	if len(p.allDissolved) > 0 {
		d := p.dissolvedReach()
		r.begins = span{min(r.begins.low, d.low), max(r.begins.high, d.high)}
	}
	return r
}

// outOfReach reports whether no route that ends like this can have a strength that is
// worth what others are that leave over no more.
func (w *walk) outOfReach(toCome int) bool {
	r := w.pass.reach
	if r == nil {
		return false
	}
	return !r.begins.times(r.dilutes.power(toCome)).times(w.volumes.expected).meets(w.strengths())
}

// strengths are those that a route must have to be worth what others are that leave
// over no more.
func (w *walk) strengths() span {
	bars := w.known.barsFor(w.pass.operations())
	if at := barAt(bars, w.volumes.leftOver); at >= 0 {
		return bars[at].strengths
	}
	return w.judge.strengths
}

// strengthsWorth is the span of expected strengths outside of which no route is worth
// so much, whatever its uncertainty.
func (j *judge) strengthsWorth(worth float64) span {
	low, high := j.limits.Lower, j.limits.Upper
	switch {
	case j.spreadOnly:
		return j.near()
	case !j.tolerant:
		by := float64(min(nearTarget, -worth*(1+slack)) * j.target)
		return span{j.target - by, j.target + by}
	case !j.twoSided():
		return j.near()
	case worth > 0.5:
		return span{low, high}
	}
	by := float64(outside * (high - low) / worth)
	return span{max(0, low-by), high + by}
}

// outside is more than x φ(x) ever is, φ being the density of the standard normal distribution. The
// chance that a strength y above two limits L < H is between them, with a standard uncertainty u,
//
//	Φ((y - L)/u) - Φ((y - H)/u) <= (H - L)/u φ((y - H)/u),
//
// is thus less than that part of (H - L)/(y - H) whatever u is, and below them likewise. A Student t
// is a mixture of normal distributions.
const outside = 0.242

// nearTarget is how far the expected strength may be off the target, as a fraction of it,
// where no two limits say.
const nearTarget = 0.1
