package plan

import "minim/uncertainty/route"

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

// prefers reports whether a is recommended rather than b: by what the preference makes
// small where both are good enough, and otherwise as a comparison does.
func prefers(c *route.Comparison, preference string, a, b *route.Result) bool {
	if inside(c, a) && inside(c, b) {
		if by, other := figure(c, preference, a), figure(c, preference, b); by != other {
			return by < other
		}
	}
	return c.Prep.Better(a, b)
}

// inside reports whether a route is good enough; all are where there is no
// tolerance.
func inside(c *route.Comparison, r *route.Result) bool {
	return len(c.Prep.Tolerances) == 0 || c.Prep.Meets(r)
}

// figure is what a preference makes small: 0 where a comparison decides.
func figure(c *route.Comparison, preference string, r *route.Result) float64 {
	switch preference {
	case route.Tightest:
		return r.Analytic.Relative()
	case route.Fewest:
		return float64(r.Operations)
	case route.LeastSolute:
		return r.SoluteUsed
	case route.Cheapest:
		cost, _ := c.Prep.Cost(r)
		return cost.Amount
	}
	return 0
}
