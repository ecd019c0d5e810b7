package quantity

import (
	"math"
	"regexp"
	"strconv"
	"strings"
)

// Parse returns the value of a text such as "25 mL" in the base unit of the
// kind. The sign and the range are the caller's to check; the value is finite,
// and zero only for a zero in the text. The error is an *Error.
func Parse(kind Kind, text string) (float64, error) {
	number, u, err := numberAndUnit(kind, text)
	if err != nil {
		return 0, err
	}
	return u.value(text, number)
}

// numberAndUnit are the parts of a text, the number as it is written.
func numberAndUnit(kind Kind, text string) (string, unit, error) {
	number, name, err := cut(text)
	if err != nil {
		return "", unit{}, err
	}
	u, err := unitOf(kind, text, name)
	return number, u, err
}

// value is so many of the unit as a bench can have.
func (u unit) value(text, number string) (float64, error) {
	value, err := float(text, number, u.power)
	if err != nil {
		return 0, err
	}
	return u.kind.checked(text, value)
}

// unitOf returns the unit of the kind with the canonical name, or says why not.
func unitOf(kind Kind, text, name string) (unit, error) {
	text = strings.TrimFunc(text, isSpace)
	u, known := find(name)
	switch {
	case known && u.kind == kind:
		return u, nil
	case known:
		return unit{}, refuse(text, "is "+u.kind.Phrase()+", not "+kind.Phrase(), kind.Phrase()+" is written in "+list(kind))
	case name == "":
		return unit{}, refuse(text, "has no unit", "add the unit: "+list(kind))
	case kind == Share && strings.HasPrefix(name, "% of "):
		return unit{}, refuse(text, "says of what, where a plain share belongs", "write % alone")
	}
	hint := "write " + meant(kind, name)
	if hint == "write " {
		return unit{}, refuse(text, "has the unit "+quote(name)+", which is not a unit of "+kind.String(), kind.Phrase()+" is written in "+list(kind))
	}
	return unit{}, refuse(text, "has the unit "+quote(name)+", which is not a unit of "+kind.String(), hint)
}

// ParseShareOf returns the share and what it is a share of: 0.08 and "target"
// for "8 % of target". A bare "8 %" is an error, as it does not say of what.
func ParseShareOf(text string) (share float64, of string, err error) {
	number, name, err := cut(text)
	if err != nil {
		return 0, "", err
	}
	name, of, _ = strings.Cut(name+" ", "of ")
	u, err := unitOf(Share, text, strings.TrimSpace(name))
	if err != nil {
		return 0, "", err
	}
	if of = strings.TrimSpace(of); of == "" {
		return 0, "", refuse(strings.TrimFunc(text, isSpace), "does not say of what", `say of what it is a share, as in "8 % of target" or "2 % of capacity"`)
	}
	share, err = u.value(text, number)
	return share, of, err
}

// Digits returns the number at the start of a text as it is written: "0.040" of
// "0.040 % w/v", and "" where there is none.
func Digits(text string) string { return decimalNumber.FindString(strings.TrimFunc(text, isSpace)) }

// Split returns the number and the unit of a text as they stand: 0.04 and
// "% w/v" for "0.65 % w/v". The unit is not looked up; it has single spaces, the
// micro sign U+00B5, and mL, L and the like as they are listed. A text without a unit is
// an error.
func Split(text string) (number float64, unit string, err error) {
	digits, unit, err := cut(text)
	if err == nil && unit == "" {
		err = refuse(digits, "has no unit", "write the unit after the number")
	}
	if err == nil {
		number, err = float(text, digits, 0)
	}
	if err != nil {
		return 0, "", err
	}
	return number, unit, nil
}

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
