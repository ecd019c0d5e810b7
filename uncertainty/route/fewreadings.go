package route

import "minim/uncertainty"

// mixed propagates a quantity, with the interval that few readings leave beside the rest.
func (c *compiler) mixed(node uncertainty.Node, coverage float64) (uncertainty.Analytic, error) {
	a, err := c.model.Propagate(node, coverage)
	return a.Mixed(), err
}

// noteReadings says what a result rests on where it is known from readings how an
// instrument scatters.
func (c *compiler) noteReadings(r *Result) {
	for _, in := range c.model.Cut(c.strength) {
		r.Notes.Assume("cut-in-divisor", in.Set.Owner.Name, uncertainty.CutFactor(in.DegreesOfFreedom))
	}
	a := &r.Analytic
	for i := range a.Budget {
		line := &a.Budget[i]
		if line.DegreesOfFreedom != 1 || line.Contribution == 0 {
			continue
		}
		if less := a.ExpandedUncertainty / a.WithReadings(line.Set, 3); less >= leastHelp {
			r.Notes.Warn("two-readings", line.Set.Owner.Name, less)
		}
	}
}

// leastHelp is by how many times less a give or take must be for it to be said.
const leastHelp = 1.05
