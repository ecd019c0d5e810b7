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
func newReach(p *pass) *reach {
	if p.from == route.Weigh {
		return nil
	}
	r := &reach{
		begins:  around(p.sources, func(s **source) span { return span{(*s).mean, (*s).mean} }),
		dilutes: around(p.dilutionGroups, func(g *group) span { return g.expected }),
	}
	if p.from != route.Start {
		r.begins = r.begins.times(around(p.firsts, func(g *group) span { return g.expected }))
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
	return span{
		bisect(0, low, func(y float64) bool { return j.mostChanceAt(y) >= worth }),
		1 / bisect(0, 1/high, func(t float64) bool { return j.mostChanceAt(1/t) >= worth }),
	}
}

// nearTarget is how far the expected strength may be off the target, as a fraction of it,
// where no two limits say.
const nearTarget = 0.1

// bisect is a point just below the least x of a range at which something holds that
// holds from there on.
func bisect(low, high float64, holds func(x float64) bool) float64 {
	for range 60 {
		if middle := (low + high) / 2; holds(middle) {
			high = middle
		} else {
			low = middle
		}
	}
	return low
}

// mostChanceAt is the greatest chance that a strength y outside of two limits L < H
// is between them, for a relative uncertainty of at most mostU. With A and B the
// distances of the nearer and the farther limit, relative to y, it is
//
//	Φ(B/r) - Φ(A/r) at r² = (B² - A²)/(2 ln(B/A)), or at mostU if that is less
//
// A Student t is a mixture of normal distributions, of which none has a greater one.
// It falls as y goes away from the limits.
func (j *judge) mostChanceAt(y float64) float64 {
	a, b := math.Abs(j.limits.Lower/y-1), math.Abs(j.limits.Upper/y-1)
	a, b = min(a, b), max(a, b)
	if a == b {
		return 0
	}
	r := min(math.Sqrt((float64(b*b)-float64(a*a))/(2*portable.Log(b/a))), j.mostU)
	return (portable.Erf(b/r/math.Sqrt2) - portable.Erf(a/r/math.Sqrt2)) / 2
}

// mostU is a relative standard uncertainty that no route from a stock or a packet
// with so many dilutions exceeds: that of all its factors pulling the same way.
func (b *Bench) mostU(dilutions int) float64 {
	most := func(list []making) float64 {
		return around(list, func(m *making) span { return span{m.size(), m.size()} }).high
	}
	source := 0.0
	for i := range b.sources {
		if !b.sources[i].isWeighed() {
			source = max(source, b.sources[i].size())
		}
	}
	n := float64(dilutions)
	return b.unit.size() + source + most(b.firsts) + float64(n*(most(b.dilutions)+b.evaporated.size()))
}

// known is a bound of the relative standard uncertainty that holds for the true one, whatever
// the readings that it was found from: there is none where there are any.
func (b *Bench) known(u float64) float64 {
	if len(b.keys.degrees) > 0 {
		return math.Inf(1)
	}
	return u
}

// size is a relative standard uncertainty that the factor does not exceed.
func (f *factor) size() float64 {
	sum := 0.0
	for _, p := range f.shared {
		sum += math.Abs(p.relative)
	}
	return math.Sqrt(f.own) + sum
}
