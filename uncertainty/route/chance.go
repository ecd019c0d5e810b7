package route

import (
	"context"

	"minim/uncertainty"
)

// ChanceOf is the chance that a route is inside the first tolerance, as [Evaluate] gives
// it with the same settings, and nothing else of it; 0 where the route cannot be done.
func (p *Prep) ChanceOf(ctx context.Context, r *Route, s uncertainty.Settings) (float64, error) {
	_, c, err := p.assess(r, s.WithDefaults().Coverage)
	if err != nil || c == nil {
		return 0, err
	}
	mc, err := c.model.Simulate(ctx, c.strength, s)
	if !withoutResult(err).None() {
		return 0, nil
	} else if err != nil {
		return 0, err
	}
	return mc.ConformanceProbability(p.Tolerances[0].Limits), nil
}
