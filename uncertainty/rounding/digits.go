package rounding

import (
	"math/big"
)

// ThreeDigits prints a standard uncertainty or a coverage factor with three significant
// digits, to the nearest, halves up.
func ThreeDigits(x float64) string { return nearest(x, 3) }

// nearest prints a number with so many significant digits, halves away from zero. It works
// on the shortest decimal that stands for it. It panics when it is not finite.
func nearest(x float64, digits int) string {
	if x == 0 {
		return "0"
	}
	mantissa, exponent := decimal(x)
	place := exponent - (digits - 1)
	// 9.996 becomes 10.0 and not 10.00.
	half := new(big.Rat).Mul(powerOfTen(-(digits - 1)), big.NewRat(1, 2))
	if mantissa.Abs(mantissa).Add(mantissa, half).Cmp(big.NewRat(10, 1)) >= 0 {
		place++
	}
	return roundTo(x, place)
}

// Factors prints the standard uncertainty u and the coverage factor k of a result with three
// digits to the nearest, so that whoever multiplies them comes within one unit of the last
// digit of U as [Expanded] prints it. Where U was cut by almost 1 % of itself (98.9 to
// 98) three digits may be too few for that: then both have as many more as it takes.
func Factors(standard, factor, expanded float64) (u, k string) {
	if expanded <= 0 {
		return ThreeDigits(standard), ThreeDigits(factor)
	}
	printed, place := twoDigits(expanded)
	unit := powerOfTen(place)
	exactly := new(big.Rat).Mul(big.NewRat(printed, 1), unit)
	const most = 17 // a double has no more
	for digits := 3; digits <= most; digits++ {
		u, k = nearest(standard, digits), nearest(factor, digits)
		exactU, _ := new(big.Rat).SetString(u)
		exactK, _ := new(big.Rat).SetString(k)
		off := new(big.Rat).Sub(exactU.Mul(exactU, exactK), exactly)
		if off.Abs(off).Cmp(unit) <= 0 {
			return u, k
		}
	}
	return ThreeDigits(standard), ThreeDigits(factor)
}
