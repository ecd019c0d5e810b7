package uncertainty

import (
	"math"

	"minim/uncertainty/statistics"
)

// Readings evaluates a quantity from repeated readings (JCGM 100, 4.2, Type A):
// their mean, the experimental standard deviation s of one reading with n - 1
// in its denominator, and its degrees of freedom n - 1. It panics for fewer
// than two readings.
func Readings(values []float64) (mean, s, degreesOfFreedom float64) {
	if len(values) < 2 {
		panic("uncertainty: a standard deviation needs at least two readings")
	}
	mean, variance := statistics.MeanAndVariance(values)
	return mean, math.Sqrt(variance), float64(len(values) - 1)
}
