package route

import (
	"minim/equipment/quantity"
	"minim/report/words/influence"
	"minim/uncertainty"
)

// mixed propagates a quantity, with the interval that few readings leave beside the rest.
func (c *compiler) mixed(node uncertainty.Node, coverage float64) (uncertainty.Analytic, error) {
	a, err := c.model.Propagate(node, coverage)
	return a.Mixed(), err
}

// noteReadings says what a result rests on where it is known from readings how an
// instrument scatters.
func (c *compiler) noteReadings(r *Result) {
	for _, in := range c.model.Cut(c.strength) {
		of := uncertainty.CutFactor(in.DegreesOfFreedom) * in.StudentScale() / in.Most
		if of >= 0.995 {
			r.Notes.Assume("cut-in-divisor-at-most", in.Set.Owner.Name, influence.Name(in))
		} else {
			r.Notes.Assume("cut-in-divisor", in.Set.Owner.Name, quantity.Percent(of), influence.Name(in))
		}
	}
	a := &r.Analytic
	for i := range a.Budget {
		line := &a.Budget[i]
		if line.DegreesOfFreedom != 1 || line.Contribution == 0 {
			continue
		}
		if a.ByReadings(line.Set) >= leastPart*a.ExpandedUncertainty {
			p := a.CoverageProbability
			r.Notes.Warn("two-readings", line.Set.Owner.Name, uncertainty.CoverageFactor(p, 1)/uncertainty.CoverageFactor(p, 3))
		}
	}
}

// leastPart of a give or take is what two readings must make by themselves for it to be said.
const leastPart = 0.1
