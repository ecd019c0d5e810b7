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

// deviation is an effect that is still to be worked out: that of these steps.
type deviation struct {
	Effect
	prep  *route.Prep
	steps []route.Step
}

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
	for _, d := range r.deviations() {
		over := plan
		if d.Step == Extra {
			if over, err = of(r.Prep, r.Made.Steps[:len(r.Planned.Steps)]); err != nil {
				return nil, err
			}
		}
		value, err := of(d.prep, d.steps)
		if err != nil {
			return nil, err
		}
		if d.Relative = value/over - 1; over != 0 && value != 0 {
			list = append(list, d.Effect)
		}
	}
	slices.SortStableFunc(list, func(a, b Effect) int { return cmp.Compare(math.Abs(b.Relative), math.Abs(a.Relative)) })
	return list, nil
}

// deviations lists them: the bench, each step of the plan that was done otherwise, and all
// that was done after it.
func (r *Record) deviations() (list []deviation) {
	if r.Prep.Bench != r.Plan.Bench {
		list = append(list, deviation{prep: r.Prep, steps: r.Planned.Steps})
	}
	for i := range r.Planned.Steps {
		before, done := &r.Planned.Steps[i], r.Made.Steps[i]
		if done.Lost = 0; done == *before {
			continue
		}
		steps := slices.Clone(r.Planned.Steps)
		steps[i] = done
		list = append(list, deviation{Effect{Step: i + 1, Planned: before, Done: &r.Made.Steps[i]}, r.Plan, steps})
	}
	if len(r.Made.Steps) > len(r.Planned.Steps) {
		list = append(list, deviation{Effect{Step: Extra}, r.Prep, r.Made.Steps})
	}
	return list
}
