package equipment

import (
	"math"

	"minim/equipment/quantity"
)

// decimal takes the rounding of binary fractions out of a product: 0.3 for 3 times
// 0.1. It keeps 15 significant digits, which any decimal of so many survives in
// binary (IEEE 754).
func decimal(x float64) float64 { return quantity.Round(x, 15) }

// Digits is a reading of so many digits or lines, as a decimal: 0.3, not 0.30000000000000004.
func Digits(n, digit float64) float64 {
	if perUnit := math.Round(1 / digit); math.Abs(float64(perUnit*digit)-1) < 1e-9 {
		return n / perUnit
	}
	return n * digit
}

// isMultiple reports whether x is a whole number of steps, one or more, up to the
// rounding of decimal fractions.
func isMultiple(x, step float64) bool {
	n := x / step
	return math.Round(n) >= 1 && math.Abs(n-math.Round(n)) <= 1e-9*math.Max(1, math.Abs(n))
}
