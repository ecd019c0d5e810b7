package rounding

import (
	"math"

	"minim/uncertainty/portable"
)

// Tolerance is δ = ½ 10^l of JCGM 101, 7.9.2, where u = c 10^l with an
// integer c of so many significant digits; u itself when it is 0 or not finite.
func Tolerance(u float64, digits int) float64 {
	if u == 0 || !portable.IsFinite(u) {
		return u
	}
	place := portable.Decade(u) - (digits - 1)
	if math.Round(u/math.Pow10(place)) >= math.Pow10(digits) {
		place++
	}
	return math.Pow10(place) / 2
}

// Reached is the greatest number of significant digits of u for which
// twice a standard error is within the numerical tolerance (JCGM 101, 7.9.4).
func Reached(u, standardError float64) int {
	digits := 0
	for digits < mostDigits && 2*standardError <= Tolerance(u, digits+1) {
		digits++
	}
	return digits
}

// mostDigits are counted: no one asks for more.
const mostDigits = 6
