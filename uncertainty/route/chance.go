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
	mc, err := c.model.Simulate(ctx, c.strength, p.printed(s))
	if !withoutResult(err).None() {
		return 0, nil
	} else if err != nil {
		return 0, err
	}
	return mc.ConformanceProbability(p.Tolerances[0].Limits), nil
}

// printed adds to settings which chances are told of a route.
func (p *Prep) printed(s uncertainty.Settings) uncertainty.Settings {
	s.Printed = nil
	for _, t := range p.Tolerances {
		s.Printed = append(s.Printed, t.Limits)
	}
	return s
}
