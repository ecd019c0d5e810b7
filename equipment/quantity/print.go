package quantity

import (
	"math"
	"strconv"
	"strings"
	"unicode"

	"minim/uncertainty/portable"
)

// Round keeps so many significant digits.
func Round(x float64, digits int) float64 {
	rounded, err := strconv.ParseFloat(strconv.FormatFloat(x, 'g', digits, 64), 64)
	if err != nil { // it is rounded up to more than the largest number
		return x
	}
	return rounded
}

// Decimal prints so many significant digits at most, without trailing zeros and without an
// exponent.
func Decimal(x float64, digits int) string { return strconv.FormatFloat(Round(x, digits), 'f', -1, 64) }

// Exact is the shortest decimal that reads as the same number.
func Exact(x float64) string { return strconv.FormatFloat(x, 'g', -1, 64) }

// Number prints a number for people: six significant digits at most.
func Number(x float64) string { return Decimal(x, 6) }

// Ends prints two numbers of which one is less with as many digits as tell them apart: six at
// most, or two of what lies between them.
func Ends(low, high float64) (a, b string) {
	digits := 6
	if between := math.Abs(high - low); between > 0 {
		for largest := max(math.Abs(low), math.Abs(high)); digits < 17 && largest > between*math.Pow10(digits-2); {
			digits++
		}
	}
	return Decimal(low, digits), Decimal(high, digits)
}

// Grams prints a mass with its unit, with nine significant digits at most, which are
// enough for any display.
func Grams(g float64) string { return Decimal(g, 9) + " g" }

// GramsBeyond prints a mass in as few digits, three or more, as show that it is more than another.
func GramsBeyond(g, limit float64) string {
	for digits := 3; digits < 9; digits++ {
		if shown := Round(g, digits); shown > limit {
			return Grams(shown)
		}
	}
	return Grams(g)
}

// GramsWithin prints a mass rounded down to three digits.
func GramsWithin(g float64) string {
	if g <= 0 {
		return "0 g"
	}
	digit := math.Pow10(portable.Decade(g) - 2)
	return Decimal(math.Floor(g/digit+1e-9)*digit, 3) + " g"
}

// Millilitres prints a volume, as [Grams] does a mass, with seven digits at most: no
// scale is read to more, and a volume that was worked out does not show its rounding.
func Millilitres(mL float64) string { return Decimal(mL, 7) + " mL" }

// Percent prints a fraction with two significant digits.
func Percent(x float64) string { return Decimal(100*x, 2) + " %" }

// Grouped prints a count with spaces between thousands.
func Grouped(n int) string {
	s := strconv.Itoa(n)
	for i := len(s) - 3; i > 0; i -= 3 {
		s = s[:i] + " " + s[i:]
	}
	return s
}

// Series is "a, b and c", where "and" is the last word to join by.
func Series(words []string, last string) string {
	n := len(words) - 1
	if n < 1 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:n], ", ") + " " + last + " " + words[n]
}

// Plain is the decimal that a number was read from, or is meant to be: 15
// significant digits at most, which take the rounding of binary fractions out of a
// product (IEEE 754).
func Plain(x float64) string { return Exact(Round(x, 15)) }

// Printable returns a text that cannot move the cursor: a tab becomes a space,
// and what has no shape of its own, such as a control character or a change of
// direction, becomes U+FFFD.
func Printable(text string) string {
	return shown(text, unicode.ReplacementChar, func(r rune) bool { return r == '\t' })
}

// OneLine returns a text for one line of a page: white space, such as a break of the line,
// becomes a space each, and what has no shape of its own is left out.
func OneLine(text string) string { return shown(text, -1, unicode.IsSpace) }

// shown puts one character in place of each that has no shape of its own, none where it is
// below 0, and spaces in place of others.
func shown(text string, hidden rune, space func(rune) bool) string {
	return strings.Map(func(r rune) rune {
		switch {
		case space(r):
			return ' '
		case unicode.IsGraphic(r):
			return r
		}
		return hidden
	}, text)
}
