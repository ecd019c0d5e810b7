package contest

import (
	"context"

	"minim/uncertainty"
	"minim/uncertainty/route"
)

// closerTrials are enough: they give a chance to 0.16 in 100.
const closerTrials = 100_000

// compareCloseness works out for each route that can be done the chance of
// coming closer to the target than the route to use. What the two have in common,
// an instrument or a material, is wrong in the same way in both.
func compareCloseness(ctx context.Context, c *route.Comparison, strengths []uncertainty.Quantity) error {
	if c.Verdict.Use < 0 {
		return nil
	}
	results, quantities := []*route.Result{&c.Results[c.Verdict.Use]}, []uncertainty.Quantity{strengths[c.Verdict.Use]}
	for i := range c.Results {
		if c.Results[i].Possible && i != c.Verdict.Use {
			results, quantities = append(results, &c.Results[i]), append(quantities, strengths[i])
		}
	}
	settings := uncertainty.Settings{Trials: min(c.Settings.Trials, closerTrials), Seed: c.Settings.Seed}
	chances, err := uncertainty.CloserTo(ctx, c.Prep.Target.Value, quantities, settings)
	if err != nil {
		return err
	}
	for i, r := range results {
		r.Closer = chances[i]
	}
	return nil
}
