package equipment

import (
	"math"
	"strconv"
)

// Grams prints a mass: the shortest decimal, with its unit, of nine significant digits
// at most, which are enough for any display.
func Grams(g float64) string { return number(g, 9) + " g" }

// Millilitres prints a volume, as [Grams] does a mass, with seven digits at most: no
// scale is read to more, and a volume that was worked out does not show its rounding.
func Millilitres(mL float64) string { return number(asPrinted(mL), 7) + " mL" }

// number prints so many significant digits at most, without trailing zeros and without
// an exponent.
func number(x float64, digits int) string {
	return strconv.FormatFloat(rounded(x, digits), 'f', -1, 64)
}

// asPrinted is the volume that [Millilitres] prints.
func asPrinted(mL float64) float64 { return rounded(mL, 7) }

func rounded(x float64, digits int) float64 {
	rounded, err := strconv.ParseFloat(strconv.FormatFloat(x, 'g', digits, 64), 64)
	if err != nil {
		return x
	}
	return rounded
}

// decimal takes the rounding of binary fractions out of a product: 0.3 for 3 times
// 0.1. It keeps 15 significant digits, which any decimal of so many survives in
// binary (IEEE 754).
func decimal(x float64) float64 {
	rounded, err := strconv.ParseFloat(strconv.FormatFloat(x, 'g', 15, 64), 64)
	if err != nil {
		panic("equipment: " + err.Error())
	}
	return rounded
}

// display prints a reading with the digits that a readability of d shows.
func display(reading, d float64) string {
	places := 0
	for scaled := d; places < 9 && math.Abs(scaled-math.Round(scaled)) > 1e-6*scaled; places++ {
		scaled *= 10
	}
	return strconv.FormatFloat(reading, 'f', places, 64) + " g"
}

// isMultiple reports whether x is a whole number of steps, one or more, up to the
// rounding of decimal fractions.
func isMultiple(x, step float64) bool {
	n := x / step
	return math.Round(n) >= 1 && math.Abs(n-math.Round(n)) <= 1e-9*math.Max(1, math.Abs(n))
}
