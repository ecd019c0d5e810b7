package plan

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const packetPrep = `
volume = "20 mL"
[solute]
name = "urea"
[solvent]
name = "water"
[[packet]]
name = "sachet"
content = "1 g"
[[stock]]
name = "stock"
strength = "10 % w/v"
`

// TestOneSidedTolerance: far more than a least strength is not what is wanted, though
// it is surely not below it (constructed).
func TestOneSidedTolerance(t *testing.T) {
	p := prepOn(t, "target = \"0.5 % w/v\"\nnot-below = \"0.48 % w/v\"\n"+packetPrep, smallKit)
	for _, m := range searched(t, p, quick(2)).Front {
		assert.Less(t, math.Abs(m.Analytic.Value-0.5), 0.05*1.001, m.Route.Name)
	}
}

// TestSolubility: no solution on the way is stronger than may be made; a stock that is
// stronger may be used (constructed).
func TestSolubility(t *testing.T) {
	p := prepOn(t, "target = \"0.5 % w/v\"\ntolerance = \"10 % of target\"\n"+packetPrep, smallKit)
	o := quick(2)
	o.Strongest = 0.03
	fromStock := false
	for _, m := range searched(t, p, o).Front {
		steps := m.Route.Steps
		fromStock = fromStock || steps[0].Stock != nil
		if steps[0].Packet != nil {
			assert.GreaterOrEqual(t, steps[1].Amount, 1/0.03*0.999, m.Route.Name)
		}
	}
	assert.Equal(t, true, fromStock)
}

// TestVolumeThatCouldBeNothing: no route uses a volume that is so badly known that it
// could be nothing (constructed).
func TestVolumeThatCouldBeNothing(t *testing.T) {
	p := prepOn(t, smallPrep, smallKit+`
[[beaker]]
name = "beaker"
capacity = "50 mL"
division = "10 mL"
tolerance = "20 mL"
`)
	for _, m := range searched(t, p, quick(1)).Front {
		assert.Equal(t, true, m.Possible && m.Informative, m.Route.Name)
		for _, s := range m.Route.Steps {
			if s.Measure != nil && s.Measure.Name == "beaker" {
				assert.Greater(t, s.Amount, 19.9, m.Route.Name)
			}
		}
	}
}

// TestBuyWithoutBalance: a bench without a balance is an option as it stands.
func TestBuyWithoutBalance(t *testing.T) {
	skipIfSlow(t)
	kit := smallKit[len("\n[[balance]]\nname = \"scale\"\ncapacity = \"100 g\"\nreadability = \"0.01 g\"\nrepeatability = \"0.01 g\"\nlinearity = \"0.02 g\"\n"):]
	p := prepOn(t, "target = \"0.5 % w/v\"\ntolerance = \"10 % of target\"\n"+packetPrep, kit+candidates)
	b, err := Buy(context.Background(), p, quick(2))
	require.NoError(t, err)
	require.Equal(t, 0, b.Verdict.Present)
	assert.Equal(t, asItIs, b.Choices[0].Name)
	assert.Equal(t, true, b.Choices[0].Meets)
	assert.Nil(t, b.Like)
}
