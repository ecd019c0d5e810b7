package route

import (
	"fmt"
	"slices"
	"strings"

	"minim/equipment/quantity"
)

// basis says what a strength counts.
type basis int

// The bases of strengths.
const (
	byMassInVolume basis = iota // mass of solute in a volume of solution
	byAmount                    // amount of substance in a volume of solution
	byMass                      // mass of solute in a mass of solution
	byVolume                    // volume of solute in a volume of solution
	byActivity                  // units of activity in a volume of solution
)

// Unit is a unit of strength with its basis, such as "% w/v".
type Unit struct {
	Name  string
	basis basis
	// per is the number of units in 1 g/mL, mol/mL, g/g, mL/mL or U/mL.
	per float64
}

// Quantity is the kind of quantity that a strength in the unit is (ISO 80000-9, from
// memory), with what it counts over what.
func (u Unit) Quantity() string {
	switch u.basis {
	case byAmount:
		return "amount-of-substance concentration"
	case byMass:
		return "mass fraction"
	case byVolume:
		return "volume concentration"
	case byActivity:
		return "catalytic activity concentration"
	}
	return "mass concentration"
}

// Counts says what the unit counts over what: "grams in 100 mL of solution".
func (u Unit) Counts() string {
	switch u.Name {
	case "% w/v":
		return "grams in 100 mL of solution"
	case "% w/w":
		return "grams in 100 g of solution"
	case "% v/v":
		return "millilitres of the liquid solute in 100 mL of solution"
	case "U/mL":
		return "units of activity in 1 mL of solution"
	}
	return ""
}

// Name and definition: 1 % w/v is 1 g in 100 mL; mol/L is (g/L)/M; a U is the
// unit in which the activity of the solute is stated.
var units = []Unit{
	{"% w/v", byMassInVolume, 100},
	{"% w/w", byMass, 100},
	{"% v/v", byVolume, 100},
	{"g/L", byMassInVolume, 1e3},
	{"mg/mL", byMassInVolume, 1e3},
	{"mg/L", byMassInVolume, 1e6},
	{"µg/mL", byMassInVolume, 1e6},
	{"mol/L", byAmount, 1e3},
	{"mmol/L", byAmount, 1e6},
	{"µmol/L", byAmount, 1e9},
	{"U/mL", byActivity, 1},
}

// UnitNames lists the units of strength that a file may use.
func UnitNames() []string {
	names := make([]string, len(units))
	for i, u := range units {
		names[i] = u.Name
	}
	return names
}

// Strength is a concentration in a unit.
type Strength struct {
	Value float64
	Unit  Unit
	// Text is the strength as a file states it, in the name of the unit: "0.060 % w/v".
	Text string
}

// ParseStrength reads a text like "0.65 % w/v". Its errors are *quantity.Error.
func ParseStrength(text string) (Strength, error) {
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
	e := &quantity.Error{Found: text, Message: fmt.Sprintf("%q is not a unit of strength", unit),
		Hint: "write one of " + strings.Join(UnitNames(), ", ")}
	same := slices.IndexFunc(units, func(u Unit) bool { return strings.EqualFold(u.Name, unit) })
	switch {
	case unit == "":
		e.Message = fmt.Sprintf("the strength %q has no unit", text)
	case same >= 0:
		e.Hint = "write " + units[same].Name
	case strings.EqualFold(unit, "mM"):
		e.Hint = "write mM or mmol/L"
	case unit == "%":
		e.Message = "\"%\" does not say of what: by weight in a volume, by weight, or by volume"
		e.Hint = "write % w/v for grams in 100 mL of solution, % w/w for grams in 100 g, % v/v for mL in 100 mL"
	case strings.HasPrefix(unit, "ppm"):
		e.Message = "\"ppm\" does not say of what"
		e.Hint = "write mg/L for milligrams in a litre; for milligrams in a kilogram write 0.0001 % w/w"
	}
	return e
}
