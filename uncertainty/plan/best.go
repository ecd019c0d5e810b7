package plan

import (
	"context"

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
