package quantity

import (
	"math"
	"regexp"
	"strconv"
	"strings"
)

// decimalNumber is a number as it may be written, at the start of a text: its
// mantissa and its exponent.
var decimalNumber = regexp.MustCompile(`^([+-]?[0-9]+(?:\.[0-9]+)?)(?:[eE]([+-]?[0-9]+))?`)

// longest is the length in bytes above which a number is refused. No reading
// has so many digits, and below it no exponent can make good for another.
const longest = 60

// cut splits a text into the number at its start and the canonical unit after it.
func cut(text string) (number, unit string, err error) {
	text = strings.TrimFunc(text, isSpace)
	if err := numberFault(text); err != nil {
		return "", "", err
	}
	number = decimalNumber.FindString(text)
	if len(number) > longest {
		return "", "", refuse(text, "has a number of more than "+strconv.Itoa(longest)+" characters", "")
	}
	return number, canonical(text[len(number):]), nil
}

// float returns number * 10^power, rounded once. The text is for the message.
func float(text, number string, power int) (float64, error) {
	parts := decimalNumber.FindStringSubmatch(number)
	mantissa, exponent := parts[1], 0
	if parts[2] != "" {
		exponent, _ = strconv.Atoi(parts[2]) // out of range gives the nearest int
		exponent = min(max(exponent, -9999), 9999)
	}
	if !strings.ContainsAny(mantissa, "123456789") {
		return 0, nil // never minus zero
	}
	value, _ := strconv.ParseFloat(mantissa+"e"+strconv.Itoa(exponent+power), 64)
	switch {
	case math.IsInf(value, 0):
		return 0, refuse(text, "is too large a number", "")
	case value == 0:
		return 0, refuse(text, "is too small a number to be told from zero", "")
	}
	return value, nil
}
