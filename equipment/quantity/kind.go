// Package quantity reads quoted quantities such as "25 mL" into floating-point
// numbers in the base units of the house: g, mL, mm, °C, g/mL, 1/°C, g/mol,
// mL/g and, for a share, a plain fraction.
//
// Every accepted unit is a power of ten of its base unit. The power is added
// to the decimal exponent in the text before the text becomes binary, so
// "100 µL" is the float64 nearest to 0.1 and not a product of two roundings.
package quantity

import "fmt"

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
	Share                      // fraction; written in %
)

// kinds holds the word for each kind, the phrase with its article, and the unit
// in which examples are written.
var kinds = [...]struct{ word, phrase, unit string }{
	Mass:           {"mass", "a mass", "g"},
	Volume:         {"volume", "a volume", "mL"},
	Length:         {"length", "a length", "mm"},
	Temperature:    {"temperature", "a temperature", "°C"},
	Density:        {"density", "a density", "g/mL"},
	Expansion:      {"expansion", "an expansion coefficient", "/°C"},
	MolarMass:      {"molar mass", "a molar mass", "g/mol"},
	SpecificVolume: {"specific volume", "a specific volume", "mL/g"},
	Share:          {"share", "a share", "%"},
}

// String returns the kind in words: "mass", "volume", "molar mass".
func (k Kind) String() string {
	if k < 0 || int(k) >= len(kinds) {
		return fmt.Sprintf("Kind(%d)", int(k))
	}
	return kinds[k].word
}

// Phrase returns the kind with its article: "a mass", "an expansion coefficient".
func (k Kind) Phrase() string { return kinds[k].phrase }

// Unit returns the unit in which an example of the kind is written. It is the
// base unit, except for a share, where it is "%".
func (k Kind) Unit() string { return kinds[k].unit }
