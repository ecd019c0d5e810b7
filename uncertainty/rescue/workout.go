package rescue

import (
	"cmp"
	"math"
	"slices"

	"minim/report/words/verb"
	"minim/uncertainty/contest"
	"minim/uncertainty/route"
	"minim/uncertainty/search"
)

// workOut works out corrections of some kinds until none that is left could be chosen, of its kind or of all,
// or as many are worked out as may be:
//
//   - those that cost least first, in what is left over and measurements, until one is sure enough;
//   - then those with as many measurements that leave over hardly more, the handiest first, until one
//     of these is: hardly more than the first of their kind, and than the first of all kinds;
//   - and where none is, those that aim nearest to the target.
func (r *rescuer) workOut(kinds ...way) {
	firsts := make([]*candidate, len(kinds))
	for i, kind := range kinds {
		if len(r.considered[kind]) == 0 {
			r.considered[kind] = r.spare[kind]
		}
		r.left[kind] = mostTried
		slices.SortStableFunc(r.considered[kind], func(a, b *candidate) int { return cmp.Or(cmp.Compare(a.cost, b.cost), cmp.Compare(a.off, b.off)) })
		firsts[i] = r.firstOf(kind)
		if first := firsts[i]; first != nil && (r.first == nil || first.cost < r.first.cost) {
			r.first = first
		}
	}
	for i, kind := range kinds {
		list := r.considered[kind]
		if firsts[i] != nil {
			r.handiestPasses(kind, firsts[i])
			r.handiestPasses(kind, r.first)
		} else {
			slices.SortStableFunc(list, func(a, b *candidate) int { return cmp.Compare(a.off, b.off) })
			r.untilOnePasses(kind, list, mostTried)
		}
		if r.left[kind] <= 0 && slices.ContainsFunc(list, func(c *candidate) bool { return !c.done }) {
			r.isCut(kind)
		}
	}
}

// firstOf is the correction of a kind that costs least of those that are sure enough, or one that leaves over hardly more and
// aims at the target, where that does not.
func (r *rescuer) firstOf(kind way) *candidate {
	first := r.untilOnePasses(kind, r.considered[kind], r.half())
	if first == nil || first.aims {
		return first
	}
	if aims := r.untilOneAims(kind, r.beside(r.considered[kind], first)); aims != nil {
		return aims
	}
	return first
}

// untilOneAims works out some corrections until one is sure enough and aims at the target; nil without.
func (r *rescuer) untilOneAims(kind way, list []*candidate) *candidate {
	if !r.ask.Tolerant {
		return nil
	}
	list = slices.DeleteFunc(slices.Clone(list), func(c *candidate) bool { return !contest.MayAim(r.prep, c.times) })
	return r.untilOne(kind, list, mostTried, func(c *candidate) bool { return c.passes && c.aims })
}

// handiestPasses works out the handiest beside one until one is sure enough: first of those that may aim at the
// target, and where none of them does, of all.
func (r *rescuer) handiestPasses(kind way, first *candidate) {
	some := r.handiest(r.considered[kind], first)
	if r.untilOneAims(kind, some) == nil {
		r.untilOnePasses(kind, some, mostTried)
	}
}

// atTarget leaves out of some corrections of a kind those that another makes needless, which aims at the target and is sure
// enough: those that aim elsewhere where it takes no more measurements and leaves over hardly more (see
// [contest.Elsewhere]), and those that take more and leave no less.
func (r *rescuer) atTarget(list []route.Result) []route.Result {
	elsewhere := func(a *route.Result) bool { return contest.Elsewhere(r.prep, a) }
	return slices.DeleteFunc(slices.Clone(list), func(a route.Result) bool {
		aside := elsewhere(&a)
		return slices.ContainsFunc(list, func(b route.Result) bool {
			needless := aside && b.Operations <= a.Operations && b.LeftOverML <= a.LeftOverML+r.ask.Near()+slack || b.Operations < a.Operations && b.LeftOverML <= a.LeftOverML+slack
			return needless && r.passes(&b) && !elsewhere(&b)
		})
	})
}

// beside are those with as many measurements as one that leave over hardly more.
func (r *rescuer) beside(list []*candidate, first *candidate) (some []*candidate) {
	for _, c := range list {
		if c.operations == first.operations && c.leftOver <= first.leftOver+r.ask.Near()+slack && (c.cost < short || first.cost >= short) {
			some = append(some, c)
		}
	}
	return some
}

// handiest are those beside one, the handiest first.
func (r *rescuer) handiest(list []*candidate, first *candidate) []*candidate {
	some := r.beside(list, first)
	for _, c := range some {
		c.handling = r.handled(c.steps)
	}
	slices.SortStableFunc(some, func(a, b *candidate) int { return a.handling.Handier(b.handling) })
	return some
}

// half of what may be worked out goes to what costs least; nothing without a tolerance, where what
// counts is how near to the target a way comes.
func (r *rescuer) half() int {
	if !r.ask.Tolerant {
		return 0
	}
	return mostTried / 2
}

// untilOnePasses works out some corrections, so many at most, until one is sure enough; nil without.
func (r *rescuer) untilOnePasses(kind way, list []*candidate, most int) *candidate {
	return r.untilOne(kind, list, most, func(c *candidate) bool { return c.passes })
}

// untilOne works out some corrections, so many at most, until one is as it should be; nil without.
func (r *rescuer) untilOne(kind way, list []*candidate, most int, should func(*candidate) bool) *candidate {
	for _, c := range list {
		switch {
		case should(c) && !r.thorough:
			return c
		case c.done:
			continue
		case r.left[kind] <= 0 || most <= 0 || r.err != nil:
			return nil
		}
		r.left[kind]--
		most--
		if r.try(kind, c); should(c) && !r.thorough {
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
	if r.err = err; err != nil || !result.Possible || !contest.LeavesEnough(&result) || !search.Near(r.prep, result.Analytic.Value) && len(r.considered[kind]) > 0 {
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
	c.passes, c.aims = r.passes(&result), !contest.Elsewhere(r.prep, &result)
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
