package route

import (
	"fmt"
	"strings"

	"minim/equipment"
	"minim/equipment/benchfile"
	"minim/equipment/quantity"
)

func readSolute(t *benchfile.Table) Solute {
	if t == nil {
		return Solute{FormFactor: 1}
	}
	t.Need("name")
	s := Solute{
		Name:           t.Text("name"),
		WeighedAs:      t.Text("weighed-as"),
		Assay:          estimate(t, "assay", parseAssay, parseAssay),
		FormFactor:     1,
		MolarMass:      likely(t, "molar-mass", quantity.MolarMass, 1, 1e7, "sodium chloride has \"58.44 g/mol\""),
		Density:        likely(t, "density", quantity.Density, 0.05, 30, "sugar has \"1.59 g/mL\", table salt \"2.16 g/mL\""),
		SpecificVolume: likely(t, "specific-volume", quantity.SpecificVolume, -1, 3, "common solids have between -0.15 and 0.9 mL/g"),
		Activity:       estimate(t, "activity", parseActivity, parseActivity),
		NonVolatile:    t.Flag("non-volatile"),
		Hazards:        t.Texts("hazards"),
	}
	if t.Has("form-factor") {
		s.FormFactor = t.Number("form-factor")
		if s.FormFactor <= 0 || s.FormFactor > 10 {
			t.Fail("form-factor", "a form factor is a ratio of molar masses", "write 0.903 for 0.903 g of the substance in 1 g of what is weighed")
		}
	}
	return s
}

// likely reads an estimate that is likely only between two limits.
func likely(t *benchfile.Table, key string, kind quantity.Kind, low, high float64, hint string) Estimate {
	parse := func(text string) (float64, error) { return quantity.Parse(kind, text) }
	return estimate(t, key, func(text string) (float64, error) {
		v, err := parse(text)
		if err == nil && (v < low || v > high) {
			err = &quantity.Error{Found: text, Message: fmt.Sprintf("%q is not likely", text), Hint: hint}
		}
		return v, err
	}, parse)
}

// parseActivity reads units of activity in a mass, "30 U/mg", as U/g.
func parseActivity(text string) (float64, error) {
	v, unit, err := quantity.Split(text)
	if err != nil {
		return 0, err
	}
	per := map[string]float64{"U/g": 1, "U/mg": 1e3, "U/µg": 1e6}[unit]
	if per == 0 || v <= 0 || v*per > 1e15 {
		return 0, &quantity.Error{Found: text, Message: fmt.Sprintf("%q is not an activity", text), Hint: "write units in a mass, \"30 U/mg\""}
	}
	return v * per, nil
}

func readSolvent(t *benchfile.Table) Solvent {
	if t == nil {
		return Solvent{}
	}
	t.Need("name")
	s := Solvent{
		Name:        t.Text("name"),
		Expansion:   equipment.Stated{Value: within(t, "expansion", quantity.Expansion, 0, 0.01, "water has \"2.1e-4 /°C\", ethanol \"1.09e-3 /°C\""), Known: t.Has("expansion")},
		Density:     equipment.Stated{Value: within(t, "density", quantity.Density, 0.3, 5, "water has \"0.998 g/mL\", ethanol \"0.789 g/mL\""), Known: t.Has("density")},
		Evaporation: shareOf(t, "evaporation", "volume"),

		evaporationStated: t.Has("evaporation"),
		expansionStated:   t.Has("expansion"),
		Hazards:           t.Texts("hazards"),
	}
	if liquid, ok := equipment.FindLiquid(s.Name); ok {
		s.Tension = liquid.SurfaceTension
		if !s.Expansion.Known {
			s.Expansion = equipment.Stated{Value: liquid.Expansion, Known: true}
		}
		if !s.Density.Known {
			s.Density = equipment.Stated{Value: liquid.Density, Known: true}
		}
	}
	return s
}

// shareOf reads a fraction of something that the text must name.
func shareOf(t *benchfile.Table, key, of string) float64 {
	text := t.Text(key)
	if text == "" {
		return 0
	}
	share, what, err := quantity.ParseShareOf(text)
	hint := fmt.Sprintf("write it as \"2 %% of %s\"", of)
	switch {
	case err != nil && strings.HasSuffix(text, "%"):
		t.Fail(key, quantityMessage(err), hint)
	case err != nil:
		t.FailWith(key, err)
	case what != of || share < 0 || share > 0.5:
		t.Fail(key, fmt.Sprintf("%q is not a share of the %s from 0 to 50 %%", text, of), hint)
	}
	return share
}

// within reads a figure that is likely only between two limits.
func within(t *benchfile.Table, key string, kind quantity.Kind, low, high float64, hint string) float64 {
	v := t.Quantity(key, kind)
	if t.Shape(key) == benchfile.Text && (v < low || v > high) {
		t.Fail(key, fmt.Sprintf("%q is not likely", t.Text(key)), hint)
		return 0
	}
	return v
}
