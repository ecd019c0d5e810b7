package uncertainty

import (
	"math"

	"minim/uncertainty/portable"
)

// Quoted is the coverage interval to be stated.
type Quoted struct {
	Lower, Upper float64
	// Simulated: the ends are those of the Monte Carlo interval, since the
	// analytic ones differ from them by more than 5 % of U.
	Simulated bool
	// Value and StandardUncertainty belong to the interval: those of the law of propagation,
	// or mean and standard deviation of the simulation. Where that has no mean, Value is the
	// model at the means of all influences; where it has no standard deviation, that is NaN.
	Value, StandardUncertainty float64
}

// Relative is half the width of the interval, relative to the value.
func (q *Quoted) Relative() float64 { return (q.Upper - q.Lower) / 2 / math.Abs(q.Value) }

// QuoteWithin is the largest difference, as a fraction of U, for which the
// analytic interval is quoted.
const QuoteWithin = 0.05

// Quote returns value ± U when both ends agree with the simulation within 5 %
// of U, and the probabilistically symmetric Monte Carlo interval otherwise. A U
// of 0 must agree altogether: it may only mean that the slope is 0.
func Quote(a Analytic, mc *MonteCarlo, c CrossCheck) Quoted {
	if c.OfExpanded <= QuoteWithin && (a.ExpandedUncertainty > 0 || c.Agrees) {
		return Quoted{Lower: a.Lower(), Upper: a.Upper(), Value: a.Value, StandardUncertainty: a.StandardUncertainty}
	}
	q := Quoted{Lower: mc.Lower, Upper: mc.Upper, Simulated: true, Value: mc.Mean, StandardUncertainty: mc.StandardDeviation}
	if !portable.IsFinite(q.Value) {
		q.Value = a.Value
	}
	return q
}
