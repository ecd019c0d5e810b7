package rounding

import (
	"fmt"
	"math"
	"math/big"
	"strconv"
	"strings"

	"minim/uncertainty/portable"
)

// Expanded rounds a value and its expanded uncertainty U >= 0 for print:
// U to two significant digits, up unless the part cut off is under 1 % of U
// (so that 10.47 becomes 11 and 28.05 becomes 28, JCGM 100, 7.2.6), and the
// value to the same place, halves away from zero. It works on the shortest
// decimal that stands for each number, so that 0.105 is a half and not a
// little less. A zero U leaves the value as it is. It panics when either is
// not finite or U is negative.
func Expanded(value, expanded float64) (v, u string) {
	if !portable.IsFinite(value) || !portable.IsFinite(expanded) || expanded < 0 {
		panic(fmt.Sprintf("rounding: cannot round %v ± %v", value, expanded))
	}
	if expanded == 0 {
		return strconv.FormatFloat(value, 'f', -1, 64), "0"
	}
	digits, place := twoDigits(expanded)
	return roundTo(value, place), shift(digits, place)
}

// twoDigits returns the two leading digits of U as they are to be printed, and
// the power of ten of the second.
func twoDigits(expanded float64) (digits int64, place int) {
	mantissa, exponent := decimal(expanded)
	place = exponent - 1
	// U = 10^place * (whole + cut), all exact.
	u := new(big.Rat).Mul(mantissa, big.NewRat(10, 1))
	whole := new(big.Int).Quo(u.Num(), u.Denom())
	cut := new(big.Rat).Sub(u, new(big.Rat).SetInt(whole))
	digits = whole.Int64()
	if cut.Mul(cut, big.NewRat(100, 1)).Cmp(u) >= 0 {
		digits++
	}
	return digits, place
}

// decimal splits a positive number into 1 <= mantissa < 10 and a power of ten.
func decimal(x float64) (mantissa *big.Rat, exponent int) {
	text := strconv.FormatFloat(x, 'e', -1, 64)
	m, e, _ := strings.Cut(text, "e")
	mantissa, _ = new(big.Rat).SetString(m)
	exponent, _ = strconv.Atoi(e)
	return mantissa, exponent
}

// roundTo rounds a number to a multiple of 10^place, halves away from zero, and
// prints it with the digits that belong to that place.
func roundTo(value float64, place int) string {
	exact, _ := new(big.Rat).SetString(strconv.FormatFloat(value, 'e', -1, 64))
	scaled := exact.Mul(exact, powerOfTen(-place))
	text := scaled.FloatString(0)
	n, _ := new(big.Int).SetString(text, 10)
	return new(big.Rat).Mul(new(big.Rat).SetInt(n), powerOfTen(place)).FloatString(max(0, -place))
}

func shift(digits int64, place int) string {
	return new(big.Rat).Mul(big.NewRat(digits, 1), powerOfTen(place)).FloatString(max(0, -place))
}

func powerOfTen(n int) *big.Rat {
	p := new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(max(n, -n))), nil)
	if n < 0 {
		return new(big.Rat).SetFrac(big.NewInt(1), p)
	}
	return new(big.Rat).SetInt(p)
}

// TwoDigits prints a standard uncertainty as [Expanded] rounds it.
func TwoDigits(u float64) string {
	_, text := Expanded(0, u)
	return text
}

// LastDigit is one unit of the last digit of an uncertainty that is printed with two.
func LastDigit(u float64) float64 {
	_, place := twoDigits(u)
	return math.Pow10(place)
}
