package plan

import (
	"cmp"
	"math"

	"minim/uncertainty/route"
)

// The preferences by which one route is recommended. Each chooses among the routes
// whose chance of being inside reaches what is asked for; where none does, the
// greatest chance decides. The first goes unless another is stated.
const (
	LeastLeftOver = "least-left-over" // nearest the target, where there is no tolerance
	Tightest      = "tightest"        // least relative expanded uncertainty
	Fewest        = "fewest"          // operations
	LeastSolute   = "least-solute"
	Cheapest      = "cheapest" // by the prices that the prep states
)

// choose returns the place of the route that is recommended.
func choose(c *route.Comparison, preference string) int {
	use := 0
	for i := range c.Results {
		if i > 0 && prefers(c, preference, &c.Results[i], &c.Results[use]) {
			use = i
		}
	}
	return use
}

// prefers reports whether a is recommended rather than b.
func prefers(c *route.Comparison, preference string, a, b *route.Result) bool {
	aMeets, bMeets := inside(c, a), inside(c, b)
	switch {
	case aMeets != bMeets:
		return aMeets
	case !aMeets && a.Chance() != b.Chance():
		return a.Chance() > b.Chance()
	}
	by := figure(c, preference, a)
	return cmp.Or(cmp.Compare(by, figure(c, preference, b)), cmp.Compare(volume(a.LeftOverML), volume(b.LeftOverML)), cmp.Compare(a.Operations, b.Operations)) < 0
}

// inside reports whether a route is good enough; all are where there is no
// tolerance.
func inside(c *route.Comparison, r *route.Result) bool {
	return len(c.Prep.Tolerances) == 0 || r.Chance() >= c.Prep.LeastChance
}

func meets(c *route.Comparison, at int) bool {
	return len(c.Prep.Tolerances) > 0 && inside(c, &c.Results[at])
}

// figure is what a preference makes small.
func figure(c *route.Comparison, preference string, r *route.Result) float64 {
	switch preference {
	case Tightest:
		return relative(r)
	case Fewest:
		return float64(r.Operations)
	case LeastSolute:
		return r.SoluteGrams
	case Cheapest:
		if cost, known := c.Prep.Cost(r); known {
			return cost.Amount
		}
		return 0
	}
	if len(c.Prep.Tolerances) == 0 {
		return r.HoldsWithin
	}
	return volume(r.LeftOverML)
}

// relative is the relative expanded uncertainty.
func relative(r *route.Result) float64 {
	return r.Analytic.ExpandedUncertainty / math.Abs(r.Analytic.Value)
}
