package plan

import (
	"math"

	"minim/uncertainty/route"
)

// better reports whether one way is to be recommended rather than another: see
// [FindRescue].
func (r *rescuer) better(a, b *route.Result) bool {
	halves := func(x *route.Result) float64 { return math.Round(2 * x.LeftOverML / r.prep.Volume) }
	switch {
	case !r.good(a) || !r.good(b):
		return (&route.Comparison{Prep: r.prep}).Better(a, b)
	case halves(a) != halves(b):
		return halves(a) < halves(b)
	case a.Operations != b.Operations:
		return a.Operations < b.Operations
	}
	if len(r.prep.Tolerances) == 0 {
		return a.HoldsWithin < b.HoldsWithin
	}
	return math.Round(1000*a.Chance()) > math.Round(1000*b.Chance())
}

// good reports whether a way is good enough, but for what else is asked of it.
func (r *rescuer) good(a *route.Result) bool {
	if len(r.prep.Tolerances) == 0 {
		return a.HoldsWithin <= 2*r.tightest && a.Enough(r.prep.Volume)
	}
	return (&route.Comparison{Prep: r.prep}).Meets(a)
}

// best returns of each kind the best way.
func (r *rescuer) best() (kinds []Way, routes []*route.Route) {
	of := make(map[Way]*route.Result)
	for i := range r.ways {
		w := &r.ways[i]
		if old := of[w.kind]; old == nil || r.better(&w.result, old) {
			of[w.kind] = &w.result
		}
	}
	for kind := FillUp; kind <= AddMore; kind++ {
		if found := of[kind]; found != nil {
			kinds, routes = append(kinds, kind), append(routes, found.Route)
		}
	}
	return kinds, routes
}
