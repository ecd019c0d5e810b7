package rescue

import (
	"math"
	"slices"

	"minim/report/words/note"
	"minim/uncertainty"
	"minim/uncertainty/plan"
	"minim/uncertainty/route"
)

// better reports whether one way is to be recommended rather than another: see
// [Find].
func (r *rescuer) better(a, b *route.Result) bool {
	halves := func(x *route.Result) float64 { return math.Round(2 * x.LeftOverML / r.prep.Volume) }
	chance := func(x *route.Result) float64 { return math.Round(1000 * min(x.Chance(), 0.999)) }
	switch {
	case r.good(a) != r.good(b):
		return r.good(a)
	case r.onTarget(a) != r.onTarget(b):
		return r.onTarget(a)
	case a.Enough(r.prep.Volume) != b.Enough(r.prep.Volume):
		return a.Enough(r.prep.Volume)
	case r.good(a) && halves(a) != halves(b):
		return halves(a) < halves(b)
	case r.good(a) && a.Operations != b.Operations:
		return a.Operations < b.Operations
	case len(r.prep.Tolerances) > 0 && chance(a) != chance(b):
		return chance(a) > chance(b)
	}
	return r.offTarget(a) < r.offTarget(b)
}

// offTarget is by how much of the target the expected strength misses it.
func (r *rescuer) offTarget(a *route.Result) float64 {
	return math.Abs(a.Analytic.Value/r.prep.Target.Value - 1)
}

// onTarget reports whether a way aims at the target itself: within a quarter of the first
// tolerance, and 1 % at least.
func (r *rescuer) onTarget(a *route.Result) bool {
	return r.offTarget(a) <= max(0.01, r.prep.HalfWidth()/4)
}

// good reports whether the strength that a way gives is good enough, but for what else is
// asked of it.
func (r *rescuer) good(a *route.Result) bool {
	if len(r.prep.Tolerances) == 0 {
		return a.HoldsWithin <= 2*r.tightest
	}
	return a.Informative && a.Chance() >= r.prep.LeastChance
}

// contenders are how many ways of a kind are simulated to choose the best of them.
const contenders = 5

// best returns of each kind the best way: of those that seem best the one that is so when
// they are simulated.
func (r *rescuer) best(s uncertainty.Settings) (kinds []note.Note, routes []*route.Route, err error) {
	for _, kind := range ways {
		list := r.seemBest(kind)
		if len(list) == 0 {
			continue
		}
		c, err := route.Evaluate(r.ctx, r.prep, list, plan.Fewer(s))
		if err != nil {
			return nil, nil, err
		}
		best := -1
		for i := range c.Results {
			if c.Results[i].Possible && (best < 0 || r.better(&c.Results[i], &c.Results[best])) {
				best = i
			}
		}
		if best >= 0 {
			kinds, routes = append(kinds, note.Of(string(kind), "")), append(routes, list[best])
		}
	}
	return kinds, routes, nil
}

// seemBest are the best ways of a kind, not simulated.
func (r *rescuer) seemBest(kind way) (routes []*route.Route) {
	var of []*route.Result
	for i := range r.found {
		if r.found[i].kind == kind {
			of = append(of, &r.found[i].result)
		}
	}
	slices.SortStableFunc(of, func(a, b *route.Result) int {
		switch {
		case r.better(a, b):
			return -1
		case r.better(b, a):
			return 1
		}
		return 0
	})
	for _, result := range of[:min(contenders, len(of))] {
		routes = append(routes, result.Route)
	}
	return routes
}
