package record

import (
	"cmp"
	"math"
	"slices"

	"minim/uncertainty/route"
)

// Effect is what one deviation from the plan does to the strength.
type Effect struct {
	// Step that was done otherwise, from 1; 0 for the temperature of the bench, and
	// Extra for all that was done after the plan.
	Step int
	// Planned and Done are the step as it was to be and as it was; nil unless Step is
	// one of the plan.
	Planned, Done *route.Step
	// Relative is the change of the expected strength when only this deviates from the
	// plan, as a fraction of it; of Extra, against the batch without it.
	Relative float64
}

// Extra stands for the steps after the plan.
const Extra = -1

// effects works out what each deviation does by itself.
func (r *Record) effects(coverage float64) ([]Effect, error) {
	of := func(p *route.Prep, steps []route.Step) (float64, error) {
		result, err := p.Assess(&route.Route{Name: r.Planned.Name, Steps: steps, Made: len(steps)}, coverage)
		return result.Analytic.Value, err
	}
	plan, err := of(r.Plan, r.Planned.Steps)
	if err != nil || plan == 0 {
		return nil, err
	}
	var list []Effect
	add := func(e Effect, p *route.Prep, steps []route.Step, over float64) error {
		value, err := of(p, steps)
		if e.Relative = value/over - 1; err == nil && over != 0 && value != 0 {
			list = append(list, e)
		}
		return err
	}
	if r.Prep.Bench != r.Plan.Bench {
		if err := add(Effect{}, r.Prep, r.Planned.Steps, plan); err != nil {
			return nil, err
		}
	}
	planned := len(r.Planned.Steps)
	for i := range r.Planned.Steps {
		before, done := &r.Planned.Steps[i], r.Made.Steps[i]
		if done.Lost = 0; done == *before {
			continue
		}
		steps := slices.Clone(r.Planned.Steps)
		steps[i] = done
		if err := add(Effect{Step: i + 1, Planned: before, Done: &r.Made.Steps[i]}, r.Plan, steps, plan); err != nil {
			return nil, err
		}
	}
	if len(r.Made.Steps) > planned {
		without, err := of(r.Prep, r.Made.Steps[:planned])
		if err != nil {
			return nil, err
		}
		if err := add(Effect{Step: Extra}, r.Prep, r.Made.Steps, without); err != nil {
			return nil, err
		}
	}
	slices.SortStableFunc(list, func(a, b Effect) int { return cmp.Compare(math.Abs(b.Relative), math.Abs(a.Relative)) })
	return list, nil
}
