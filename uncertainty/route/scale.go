package route

import "minim/equipment/quantity"

// Scale is by what the readings of the instrument of a step differ, a digit, a line or a
// drop, and the most that it shows, in the unit of the amount. The first is 0 where
// there is one mark only.
func (s *Step) Scale() (digit, most float64) {
	switch {
	case s.Balance != nil:
		return s.Balance.Readability, s.Balance.Capacity
	case s.Measure == nil:
		return 0, 0
	case s.Measure.Kind.Traits().Counts:
		return 1, quantity.Limits.StepDrops.Most
	}
	return s.Measure.Finest(), s.Measure.Capacity
}

// With is the route with another amount in a step, from 0.
func (r *Route) With(step int, amount float64) *Route {
	other := Route{Name: r.Name, Steps: append([]Step(nil), r.Steps...), Made: r.Made}
	other.Steps[step].Amount = amount
	return &other
}

// Rises reports whether the strength rises with the amount of a step: it does with what
// is weighed, measured out or taken, and falls with what dilutes.
func (s *Step) Rises() bool { return !s.Verb.brings(solvent) }
