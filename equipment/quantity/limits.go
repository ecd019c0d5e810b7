package quantity

import (
	"fmt"
	"math"
	"slices"
	"strconv"
)

// Limit is what a number in a file may be: from Least to Most. Far outside of what is
// sold or done, it keeps a slipped unit or digit from giving figures without meaning.
type Limit struct {
	// Of says what is limited: a key, or what is worked out from two.
	Of          string
	Least, Most float64
	Unit        string
}

// Limits are the limits of single numbers (common practice, no source). A share is a
// fraction.
var Limits = []Limit{
	{"capacity, line", 1e-6, 1e9, "g or mL"},
	{"steps of a display", 1, 1e8, ""},
	{"lines of a scale", 1, 2000, ""},
	{"numbers on a scale", 1, 200, ""},
	{"drop", 1e-3, 1, "mL"},
	{"drops of a step", 1, 10000, ""},
	{"fills for a pen line", 1, 100, ""},
	{"whole number", 0, 1e4, ""},
	{"count", 1, 100, ""},
	{"k", 1, 10, ""},
	{"expansion", 0, 0.01, "/°C"},
	{"vessel", 1e-3, 1e6, "g"},
	{"price", 0, 1e9, ""},
	{"volume wanted", 1e-3, 1e6, "mL"},
	{"volume of a stock, content", 1e-6, 1e6, "mL or g"},
	{"tolerance", 1e-6, 1, "of the target"},
	{"strength", 1e-15, 3, "g/mL"},
	{"strength by amount", 1e-18, 0.1, "mol/mL"}, // water itself holds 0.055
	{"strength by volume", 1e-15, 1, "mL/mL"},
	{"strength by activity", 1e-12, 1e12, "U/mL"},
	{"temperature", 0, 50, "°C"},
	{"within", 0, 25, "°C"},
	{"assay", 1e-6, 1, ""},
	{"form-factor", 1e-3, 10, ""},
	{"molar-mass", 1, 1e7, "g/mol"},
	{"density of a solute", 0.05, 30, "g/mL"},
	{"density of a solvent", 0.3, 5, "g/mL"},
	{"specific-volume", -1, 3, "mL/g"},
	{"activity", 1e-6, 1e15, "U/g"},
	{"evaporation, loss, contraction", 0, 0.5, ""},
}

// kindLimits are the sizes, whatever the sign, of every quantity of a kind but zero, in
// its base unit: wide enough for all that is limited by its key.
var kindLimits = [...]Limit{
	Mass:           {"a mass", 1e-12, 1e12, "g"},
	Volume:         {"a volume", 1e-12, 1e12, "mL"},
	Length:         {"a length", 1e-3, 1e4, "mm"},
	Temperature:    {"a temperature", 1e-6, 1e3, "°C"},
	Density:        {"a density", 1e-6, 1e3, "g/mL"},
	Expansion:      {"an expansion coefficient", 1e-9, 1e3, "/°C"},
	MolarMass:      {"a molar mass", 1e-3, 1e9, "g/mol"},
	SpecificVolume: {"a specific volume", 1e-6, 1e3, "mL/g"},
	Share:          {"a share", 1e-9, 1e3, ""},
}

// KindLimits lists the limits of every quantity of a kind.
func KindLimits() []Limit { return kindLimits[:] }

// LimitOf is the limit of that name. It panics where there is none.
func LimitOf(of string) Limit {
	at := slices.IndexFunc(Limits, func(l Limit) bool { return l.Of == of })
	if at < 0 {
		panic(fmt.Sprintf("quantity: there is no limit of %q", of))
	}
	return Limits[at]
}

// Holds reports whether a number lies within the limit.
func (l Limit) Holds(x float64) bool { return x >= l.Least && x <= l.Most }

// checked returns a value of a kind that a bench can have.
func (k Kind) checked(text string, value float64) (float64, *Error) {
	l, size := kindLimits[k], math.Abs(value)
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
	if l.Of == kindLimits[Share].Of {
		return strconv.FormatFloat(100*x, 'g', 6, 64) + " %"
	}
	return strconv.FormatFloat(x, 'g', -1, 64) + " " + l.Unit
}

// Size is how long a list or a text in a file may be.
type Size struct {
	Of   string
	Most int
}

// Sizes are those of lists by their key, of tables of the same header, and of what they
// make together.
var Sizes = []Size{
	{"instruments of a kit", 100},
	{"candidate", 50},
	{"route", 200},
	{"steps", 100},
	{"stock", 50},
	{"packet", 50},
	{"hazard", 50},
	{"tolerance", 20},
	{"ladder", 50},
	{"entries", 2000},
	{"readings", 1000},
	{"hazards", 50},
	{"words", 50},
	{"without", 100},
	{otherLists, 200},
}

// TextSizes are the most characters of a text by its key.
var TextSizes = []Size{
	{"note", 5000},
	{"title", 300},
	{otherTexts, 500},
}

const (
	otherLists = "any other list"
	otherTexts = "any other text"
)

// LongestList is the most items that a list at a key may have.
func LongestList(key string) int { return sizeOf(Sizes, key, otherLists) }

// LongestText is the most characters that a text at a key may have.
func LongestText(key string) int { return sizeOf(TextSizes, key, otherTexts) }

func sizeOf(list []Size, key, other string) int {
	most := 0
	for _, s := range list {
		if s.Of == key {
			return s.Most
		}
		if s.Of == other {
			most = s.Most
		}
	}
	return most
}
