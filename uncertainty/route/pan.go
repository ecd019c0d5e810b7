package route

import (
	"minim/equipment"
	"minim/uncertainty"
)

// pan is what stands on the balance of a step before it weighs: the vessel that the step
// states, or, where the gross reading of the weighing before is the tare, all that was
// weighed into it. An aliquot and the total that it is made up to stand in one vessel.
func (c *compiler) pan(i int) equipment.Pan {
	steps := c.route.Steps
	s := &steps[i]
	if c.goesOnFrom(i) {
		return s.Balance.Under(c.pan(i-1), steps[i-1].Amount)
	}
	if i > 0 && steps[i-1].Verb == WeighAliquot {
		return c.pan(i - 1)
	}
	vessel := s.Vessel
	if !vessel.Known && s.Verb == WeighAliquot && i+1 < len(steps) && steps[i+1].Verb == WeighUpTo {
		vessel = steps[i+1].Vessel
	}
	return s.Balance.PanWith(vessel, s.Verb.Traits().WeighsSolute)
}

// goesOnFrom reports whether the tare of a step is the gross reading of the step before.
func (c *compiler) goesOnFrom(i int) bool {
	if i == 0 {
		return false
	}
	before, s := &c.route.Steps[i-1], &c.route.Steps[i]
	return before.SeparateTare && s.SeparateTare && before.Balance == s.Balance && max(before.Piece, 1) == max(s.Piece, 1) && !before.WeighedBack && !s.WeighedBack
}

// onBalance weighs on a zeroed boat, or between two readings: of the tare, or the gross
// reading of the step before, and the gross, or of the gross and the emptied boat.
func (c *compiler) onBalance(i int, use equipment.Use) (uncertainty.Node, error) {
	s := &c.route.Steps[i]
	switch {
	case c.goesOnFrom(i):
		return s.Balance.WeighBetween(use, s.Amount, c.use(i-1).Step, c.pan(i))
	case s.SeparateTare || s.WeighedBack:
		return s.Balance.WeighBetween(use, s.Amount, c.owner(uncertainty.Tare, i+1), c.pan(i))
	}
	return s.Balance.Weigh(use, s.Amount, use.Step, c.pan(i))
}
