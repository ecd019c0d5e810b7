package plan

import (
	"context"

	"minim/report/words/note"
	"minim/uncertainty/route"
)

// best is the route that is recommended on a bench, simulated, by the preference of
// the options: of those that reach the chance that is asked for; where none does,
// the one with the greatest chance; where all miss by far or there is no tolerance,
// the tightest. It is nil where the bench allows none. Only what decides is searched,
// which is much less than a whole front. The bench that it returns says what was not
// searched.
func best(ctx context.Context, p *route.Prep, o Options) (*route.Result, *bench, error) {
	b, err := newBench(p, o)
	if err != nil {
		return nil, nil, err
	}
	surest, tightest := newJudge(p, b.coverage, tooLittle, enough), tightness(p, b.coverage)
	surest.worthOnly, tightest.worthOnly = true, true
	judges := []judge{tightest}
	if len(p.Tolerances) > 0 {
		judges = []judge{newJudge(p, b.coverage, p.LeastChance, p.LeastChance), surest, tightest}
	}
	var chosen *route.Result
	for i, j := range judges {
		if i == 2 {
			o.Work = atMost(o.Work, briefly) // none is good enough anyway
		}
		list, err := newSearch(b, o, j).result(ctx)
		if err != nil {
			return nil, nil, err
		}
		r, err := chosenOf(ctx, p, list, o)
		if err != nil {
			return nil, nil, err
		}
		if r != nil {
			chosen = r
		}
		if chosen != nil && (i > 0 || j.floor < 0 || r.Chance() >= p.LeastChance) {
			break
		}
	}
	return chosen, b, nil
}

// chosenOf simulates routes and chooses one, nil where there is none.
func chosenOf(ctx context.Context, p *route.Prep, list []found, o Options) (*route.Result, error) {
	if len(list) == 0 {
		return nil, nil
	}
	c, use, err := simulated(ctx, p, list, o, func(_ *route.Comparison, use int) []int { return []int{use} })
	if err != nil || use < 0 {
		return nil, err
	}
	return &c.Results[use], nil
}

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
		return r.GiveOrTake()
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

// Dilutions finds the routes by volume with just so many dilutions as the options say that no
// other beats at any chance; one piece may pull both ways, as where a bottle is diluted with the
// cylinder that is at hand. They are neither simulated nor named; notSearched says
// what was left out.
func Dilutions(ctx context.Context, p *route.Prep, o Options) (routes []*route.Route, notSearched []note.Note, err error) {
	o.All = true
	b, err := newBench(p, o)
	if err != nil || len(b.dilutions) == 0 {
		return nil, nil, err
	}
	s := only(b, o, newJudge(p, b.coverage, tooLittle, enough), o.Steps)
	list, err := s.result(ctx)
	for i := range list {
		routes = append(routes, list[i].Route)
	}
	return routes, s.notSearched, err
}
