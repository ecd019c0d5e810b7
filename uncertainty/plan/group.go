package plan

import (
	"math"
	"slices"

	"minim/uncertainty/route"
)

// Routes of the front are grouped for whoever reads them all, as data. Of those with the same number of
// operations that are not good enough, the surest stands for all. Where none is
// good enough, or there is no tolerance, and among those that are, near-equals go
// together: what they leave over differs by no more than half or 1 mL, or their
// chances by no more than 10 in 100, or their relative uncertainties by 30 %.
const (
	nearLeftOver = 0.5
	nearML       = 1
	nearChance   = 0.1
	nearRelative = 0.3
)

// grouped returns for each route of the front the place of its leader among the
// leaders, and the leaders, in the order of the front. The route to use leads those
// that are near to it, and every other joins the first leader that it is near to.
func grouped(c *route.Comparison, use int) (groups, leaders []int) {
	groups = make([]int, len(c.Results))
	for i := range c.Results {
		at := slices.IndexFunc(leaders, func(other int) bool { return other != use && alike(c, use, other, i) })
		if i == use || alike(c, use, use, i) {
			at = slices.Index(leaders, use)
			if at < 0 {
				leaders = append(leaders, use)
				at = len(leaders) - 1
			}
		}
		if at < 0 {
			at = len(leaders)
			leaders = append(leaders, i)
		}
		if leader := &leaders[at]; *leader != use && !good(c, use, i) && c.Results[i].Chance() > c.Results[*leader].Chance() {
			*leader = i
		}
		groups[i] = at
	}
	return groups, leaders
}

// good reports whether a route is good enough, where the one to use is.
func good(c *route.Comparison, use, at int) bool {
	return !c.Prep.Meets(&c.Results[use]) || len(c.Prep.Tolerances) == 0 || c.Prep.Meets(&c.Results[at])
}

// alike reports whether two routes of the front go together, where one is to be used.
func alike(c *route.Comparison, use, one, other int) bool {
	a, b := &c.Results[one], &c.Results[other]
	if a.Operations != b.Operations || good(c, use, one) != good(c, use, other) {
		return false
	}
	if !good(c, use, one) || math.Abs(a.LeftOverML-b.LeftOverML) <= max(nearML, nearLeftOver*min(a.LeftOverML, b.LeftOverML)) {
		return true
	}
	if c.Prep.Meets(&c.Results[use]) {
		return false
	}
	if len(c.Prep.Tolerances) > 0 {
		return math.Abs(a.Chance()-b.Chance()) <= nearChance
	}
	return math.Abs(a.GiveOrTake()-b.GiveOrTake()) <= nearRelative*min(a.GiveOrTake(), b.GiveOrTake())
}
