package rescue

import (
	"cmp"
	"math"
	"slices"

	"minim/report/words/verb"
	"minim/uncertainty/route"
)

// workOut works out corrections of a kind until none that is left could be chosen, or as many are
// worked out as may be:
//
//   - those that cost least first, in what is left over and measurements, until one is sure enough;
//   - then those with as many measurements that leave over hardly more, the handiest first, until one
//     of these is;
//   - and where none is, those that aim nearest to the target.
func (r *rescuer) workOut(kind way) {
	list, left := r.considered[kind], mostTried
	if len(list) == 0 {
		list = r.spare[kind]
	}
	slices.SortStableFunc(list, func(a, b *candidate) int { return cmp.Or(cmp.Compare(a.cost, b.cost), cmp.Compare(a.off, b.off)) })
	first := r.untilOnePasses(kind, list, &left, r.half())
	if first != nil {
		most := first.leftOver + r.ask.Near() + slack
		some := slices.DeleteFunc(slices.Clone(list), func(c *candidate) bool {
			return c.operations != first.operations || c.leftOver > most || c.cost >= short && first.cost < short
		})
		for _, c := range some {
			c.handling = r.handled(c.steps)
		}
		slices.SortStableFunc(some, func(a, b *candidate) int { return a.compare(b.handling) })
		r.untilOnePasses(kind, some, &left, mostTried)
	} else {
		slices.SortStableFunc(list, func(a, b *candidate) int { return cmp.Compare(a.off, b.off) })
		r.untilOnePasses(kind, list, &left, mostTried)
	}
	if left <= 0 && slices.ContainsFunc(list, func(c *candidate) bool { return !c.done }) {
		r.isCut(kind)
	}
}

// half of what may be worked out goes to what costs least; nothing without a tolerance, where what
// counts is how near to the target a way comes.
func (r *rescuer) half() int {
	if !r.ask.Tolerant {
		return 0
	}
	return mostTried / 2
}

// untilOnePasses works out some corrections, of so many at most that are left, until one is sure enough; nil without.
func (r *rescuer) untilOnePasses(kind way, list []*candidate, left *int, most int) *candidate {
	for _, c := range list {
		switch {
		case c.passes && !r.thorough:
			return c
		case c.done:
			continue
		case *left <= 0 || most <= 0 || r.err != nil:
			return nil
		}
		*left--
		most--
		if r.try(kind, c); c.passes && !r.thorough {
			r.stopped = true
			return c
		}
	}
	return nil
}

// try works a correction out by its model as a whole.
func (r *rescuer) try(kind way, c *candidate) {
	if r.err = r.ctx.Err(); r.err != nil {
		return
	}
	r.tried++
	c.done = true
	whole := &route.Route{Name: verb.Name(c.steps), Steps: slices.Concat(r.batch.Steps, c.steps), Made: len(r.batch.Steps)}
	result, err := r.prep.Assess(whole, r.coverage)
	if r.err = err; err != nil || !result.Possible {
		return
	}
	if r.err = r.prep.Misread(&result); r.err != nil {
		return
	}
	for i := range result.Inside {
		result.Inside[i].Simulated = result.Inside[i].Normal
	}
	target := r.prep.Target.Value
	result.HoldsWithin = (math.Abs(result.Analytic.Value-target) + result.Analytic.ExpandedUncertainty) / target
	r.tightest = min(r.tightest, result.HoldsWithin)
	r.found[kind] = append(r.found[kind], result)
	c.passes = r.passes(&result)
	r.passed = r.passed || c.passes
}

// passes reports whether nothing surer is asked for.
func (r *rescuer) passes(a *route.Result) bool {
	return r.ask.Tolerant && a.Informative && a.Enough(r.prep.Volume) && a.Chance() >= r.ask.Halved() && !r.prep.OutsideIfMisread(a)
}

// good reports whether the strength that a way gives is good enough, but for what else is
// asked of it.
func (r *rescuer) good(a *route.Result) bool {
	if len(r.prep.Tolerances) == 0 {
		return a.HoldsWithin <= 2*r.tightest
	}
	return a.Informative && a.Chance() >= r.prep.LeastChance
}
