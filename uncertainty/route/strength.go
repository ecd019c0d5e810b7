package route

import (
	"fmt"
	"slices"
	"strings"

	"minim/equipment/quantity"
)

// Unit is a unit of strength with its basis, such as "% w/v".
type Unit struct {
	Name string
	// perGram is the number of units in 1 g/mL; for an amount of substance
	// that times the molar mass.
	perGram float64
	molar   bool
}

// Name and definition: 1 % w/v is 1 g in 100 mL; mol/L is (g/L)/M.
var units = []Unit{
	{Name: "% w/v", perGram: 100},
	{Name: "g/L", perGram: 1e3},
	{Name: "mg/mL", perGram: 1e3},
	{Name: "mg/L", perGram: 1e6},
	{Name: "µg/mL", perGram: 1e6},
	{Name: "mol/L", perGram: 1e3, molar: true},
	{Name: "mmol/L", perGram: 1e6, molar: true},
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
	// Text is the strength as a file states it: "0.040 % w/v".
	Text string
}

// ParseStrength reads a text like "0.04 % w/v". Its errors are *quantity.Error.
func ParseStrength(text string) (Strength, error) {
	value, unit, err := quantity.Split(text)
	if err != nil {
		return Strength{}, err
	}
	unit = strings.ReplaceAll(strings.Join(strings.Fields(unit), " "), "μ", "µ")
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
	case unit == "M" || unit == "mM":
		e.Hint = "write mol/L or mmol/L"
	case unit == "% w/w" || unit == "% v/v":
		e.Message = unit + " is not among the strengths that are computed"
	case unit == "%":
		e.Message = "\"%\" does not say of what: by weight in a volume, by weight, or by volume"
		e.Hint = "write % w/v for grams in 100 mL"
	case strings.HasPrefix(unit, "ppm"):
		e.Message = "\"ppm\" does not say of what"
		e.Hint = "write mg/L for milligrams in a litre"
	}
	return e
}

// perGramPerML is the number of units in a mass concentration of 1 g/mL, for a
// solute of the given molar mass in g/mol.
func (u Unit) perGramPerML(molarMass float64) float64 {
	if u.molar {
		return u.perGram / molarMass
	}
	return u.perGram
}

// gramsPerML is the strength as a mass concentration.
func (s Strength) gramsPerML(molarMass float64) float64 {
	return s.Value / s.Unit.perGramPerML(molarMass)
}
