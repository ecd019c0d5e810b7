package route

import "minim/uncertainty"

// Estimate is a stated value with what is known of its uncertainty. One that was stated
// with a mistake in it is known to be 0, so that its absence is no second mistake.
type Estimate struct {
	Value float64
	// Distribution is nil when the value was stated without uncertainty.
	Distribution uncertainty.Distribution
	// Known is false when nothing was stated.
	Known bool
}

// u is the standard uncertainty, 0 where nothing is known of it.
func (e *Estimate) u() float64 {
	if e.Distribution == nil {
		return 0
	}
	return uncertainty.SummaryOf(e.Distribution).StandardUncertainty
}

// Between is a value of which only the limits are known.
func Between(low, high float64) Estimate {
	d := uncertainty.Rectangular{Low: low, High: high}
	return Estimate{Value: uncertainty.SummaryOf(d).Mean, Distribution: d, Known: true}
}

// ExpandedBy is a value from a certificate that states U and k.
func ExpandedBy(value, expanded, k float64) Estimate {
	return Estimate{Value: value, Distribution: uncertainty.Normal{Mu: value, Sigma: expanded / k}, Known: true}
}
