package route

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty/near"
	"minim/uncertainty/strengths"
)

// TestConversionsAreThoseOfTheModel compares the floats of a search with what the model of a
// route says of the same solution; the figures are constructed, as the formulas beside
// gramsPerML have them.
func TestConversionsAreThoseOfTheModel(t *testing.T) {
	known := func(x float64) Estimate { return Between(x-0.01, x+0.01) }
	p := &Prep{Solute: Solute{
		Name: "solute", MolarMass: known(50), Density: known(1.25), SpecificVolume: known(0.5),
		Properties: map[string]Estimate{"activity": known(40)},
	}}
	p.Solvent.Name, p.Solvent.Density.Value, p.Solvent.Density.Known = "water", 0.998, true
	for unit, want := range map[string]float64{
		"% w/v": 0.2, "mol/L": 0.01, "U/mL": 0.5, "% v/v": 0.25, "% w/w": 0.2 * 0.998 / (1 - 0.2*(1-0.5*0.998)),
	} {
		text := map[string]string{"mol/L": "0.2 ", "U/mL": "20 "}[unit]
		if text == "" {
			text = "20 "
		}
		s, err := strengths.Parse(text + unit)
		assert.NoError(t, err)
		got, err := p.gramsPerML(s)
		assert.NoError(t, err)
		near.Relative(t, unit, want, got, 1e-14)
		near.Relative(t, unit+" and back", s.Value, p.fromGramsPerML(got, s.Unit), 1e-14)
	}
	near.Relative(t, "density", 0.998/(1-0.2*(1-0.5*0.998)), p.Density(0.2), 1e-14)
	near.Relative(t, "mass fraction", 0.2, p.MassFraction(0.2*p.Density(0.2)), 1e-14)
}
