// Package quantity reads quoted quantities such as "25 mL" into floating-point
// numbers in the base units of the house: g, mL, mm, °C, g/mL, 1/°C, g/mol,
// mL/g, min and, for a share, a plain fraction.
//
// Every accepted unit is a power of ten of its base unit. The power is added
// to the decimal exponent in the text before the text becomes binary, so
// "100 µL" is the float64 nearest to 0.1 and not a product of two roundings.
package quantity

import (
	"math"
	"strconv"
)

// Kind is a kind of quantity (JCGM 200, 1.2).
type Kind int

// The kinds and their base units.
const (
	Mass           Kind = iota // g
	Volume                     // mL
	Length                     // mm
	Temperature                // °C, differences too
	Density                    // g/mL
	Expansion                  // cubic expansion coefficient, 1/°C
	MolarMass                  // g/mol
	SpecificVolume             // mL/g
	Duration                   // min
	Share                      // fraction; written in %
)

// kinds holds the word for each kind, and how large its quantities may be, whatever the
// sign, but for zero: wide enough for all that is limited by its key. The limit has the
// kind with its article, and the unit in which examples are written.
var kinds = [...]struct {
	word  string
	limit Limit
}{
	Mass:           {"mass", Limit{"a mass", 1e-12, 1e12, "g"}},
	Volume:         {"volume", Limit{"a volume", 1e-12, 1e12, "mL"}},
	Length:         {"length", Limit{"a length", 1e-3, 1e4, "mm"}},
	Temperature:    {"temperature", Limit{"a temperature", 1e-6, 1e3, "°C"}},
	Density:        {"density", Limit{"a density", 1e-6, 1e3, "g/mL"}},
	Expansion:      {"expansion", Limit{"an expansion coefficient", 1e-9, 1e3, "/°C"}},
	MolarMass:      {"molar mass", Limit{"a molar mass", 1e-3, 1e9, "g/mol"}},
	SpecificVolume: {"specific volume", Limit{"a specific volume", 1e-6, 1e3, "mL/g"}},
	Duration:       {"time", Limit{"a time", 1e-3, 1e6, "min"}},
	Share:          {"share", Limit{"a share", 1e-9, 1e3, "%"}},
}

// String returns the kind in words: "mass", "volume", "molar mass".
func (k Kind) String() string {
	if k < 0 || int(k) >= len(kinds) {
		return "Kind(" + strconv.Itoa(int(k)) + ")"
	}
	return kinds[k].word
}

// Phrase returns the kind with its article: "a mass", "an expansion coefficient".
func (k Kind) Phrase() string { return kinds[k].limit.Of }

// Unit returns the unit in which an example of the kind is written. It is the
// base unit, except for a share, where it is "%".
func (k Kind) Unit() string { return kinds[k].limit.Unit }

// checked returns a value of a kind that a bench can have.
func (k Kind) checked(text string, value float64) (float64, error) {
	l, size := kinds[k].limit, math.Abs(value)
	switch {
	case size > l.Most:
		return 0, refuse(text, "is too large a number for "+l.Of, "look at the number and its unit; at most "+l.show(l.Most)+" is read")
	case size > 0 && size < l.Least:
		return 0, refuse(text, "is too small a number for "+l.Of, "look at the number and its unit; at least "+l.show(l.Least)+" is read")
	}
	return value, nil
}

// show prints an end of a limit with its unit, of a share in %.
func (l Limit) show(x float64) string {
	if l.Unit == "%" {
		x = Round(100*x, 6)
	}
	return Exact(x) + " " + l.Unit
}
