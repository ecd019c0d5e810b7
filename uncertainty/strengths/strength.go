package strengths

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"minim/equipment/quantity"
)

// Strength is a concentration in a unit.
type Strength struct {
	Value float64
	Unit  Unit
	// Text is the strength as a file states it, in the name of the unit: "0.060 % w/v".
	Text string
}

// Parse reads a text like "0.65 % w/v". Its errors are *quantity.Error.
func Parse(text string) (Strength, error) {
	value, unit, err := quantity.Split(text)
	if err != nil {
		return Strength{}, err
	}
	unit = strings.Join(strings.Fields(unit), " ")
	unit, text = respelt(unit, text)
	i := slices.IndexFunc(units, func(u Unit) bool { return u.Name == unit })
	if i < 0 {
		return Strength{}, unknownUnit(text, unit)
	}
	if value <= 0 {
		return Strength{}, &quantity.Error{Found: text, Message: fmt.Sprintf("a strength must be greater than zero, found %q", text)}
	}
	return Strength{value, units[i], text}, nil
}

func unknownUnit(text, unit string) error {
	fault := func(message, hint string) error {
		return &quantity.Error{Found: text, Message: message, Hint: "write " + hint}
	}
	all, none := "one of "+strings.Join(unitNames(), ", "), strconv.Quote(unit)+" is not a unit of strength"
	same := slices.IndexFunc(units, func(u Unit) bool { return strings.EqualFold(u.Name, unit) })
	switch {
	case unit == "":
		return fault(fmt.Sprintf("the strength %q has no unit", text), all)
	case same >= 0:
		return fault(none, units[same].Name)
	case strings.EqualFold(unit, "mM"):
		return fault(none, "mM or mmol/L")
	case unit == "%":
		return fault("\"%\" does not say of what: by weight in a volume, by weight, or by volume",
			"% w/v for grams in 100 mL of solution, % w/w for grams in 100 g, % v/v for mL in 100 mL")
	case strings.HasPrefix(unit, "ppm"):
		return fault("\"ppm\" does not say of what", "mg/L for milligrams in a litre; for milligrams in a kilogram write 0.0001 % w/w")
	}
	return fault(none, all)
}
