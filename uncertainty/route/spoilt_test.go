package route

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment"
	"minim/uncertainty"
	"minim/uncertainty/near"
	"minim/uncertainty/strengths"
)

// Of 100 mL from which 10 mL go on, and 2 mL were taken besides and thrown away, 88 mL are
// left, both as a number and as the quantity that a step with all of it goes on with
// (constructed).
func TestVolumeLeftAfterASpoiltAliquot(t *testing.T) {
	p := parse(t, exactKit, recipe{more: stockOf("10 g/L", `volume = "100 mL"`), steps: fromStock + takeTen + toMark}.text())
	for _, lost := range []float64{0, 2} {
		c := p.newCompiler(p.Routes[0])
		l, err := c.stock(p.Stocks[0])
		require.NoError(t, err)
		require.NoError(t, c.draw(l, c.model.Constant(10), 10, lost))
		near.Relative(t, "left / mL", 90-lost, l.left, 1e-12)
		near.Relative(t, "volume / mL", 90-lost, c.model.Intended(l.volume), 1e-12)
		near.Relative(t, "solute used / g", 0.01*(10+lost), c.soluteUsed, 1e-12)
		near.Absolute(t, "left over / mL", lost, c.leftOver, 1e-12)
	}
}

// A liquid solute that was measured out once in vain is used up as well: 10 mL that go on
// and 5 mL that do not, of 1.26 g/mL (constructed).
func TestLossOfASpoiltLiquidSolute(t *testing.T) {
	x := recipe{target: "100 g/L", solute: "name = \"glycerol\"\ndensity = \"1.26 g/mL\"", steps: `{ measure = "10 mL", with = "10 mL pipette" }, ` + toMark}
	for _, lost := range []float64{0, 5} {
		p := parse(t, exactKit, x.text())
		p.Routes[0].Steps[0].Lost = lost
		r := only(t, p)
		near.Relative(t, "solute used / g", 1.26*(10+lost), r.SoluteUsed, 1e-12)
		near.Relative(t, "strength", 126, r.Intended, 1e-12)
	}
}

const thenTwentyAndTwenty = `{ take = "20 mL", with = "cylinder" }, { add = "20 mL", with = "cylinder" }, `

// diluted is by what 20 mL of a recipe with 20 mL of solvent are weaker.
func diluted(t *testing.T, x recipe) float64 {
	t.Helper()
	strong := x.run(t).Intended
	x.steps += thenTwentyAndTwenty
	return x.run(t).Intended / strong
}

// How 20 mL of a mixture of ethanol and water contract with 20 mL of water tells what was
// mixed by weight: 10 g of a stock in ethanol, of 0.7893 g/mL but for its solute, made up
// to 50 g with water of 0.998201 g/mL (OIML R 22 for the contraction).
func TestMixingAnAliquotByWeight(t *testing.T) {
	x := recipe{target: "1 g/L", solute: "name = \"dye\"\nspecific-volume = \"0.5 mL/g\"", solvent: "name = \"water\"\ndensity = \"998.201 kg/m³\"",
		more: stockOf("10 g/L", inEthanol), steps: fromStock + `{ weigh-aliquot = "10.00 g", on = "balance" }, { weigh-up-to = "50.00 g", on = "balance", vessel = "50 g" }, `}
	volume := 10 / (0.7893 + 0.01*(1-0.5*0.7893))
	_, q := equipment.MixAlcohol(volume, 1, 40/0.998201, 0)
	both, _ := equipment.MixAlcohol(20, q, 20, 0)
	near.Relative(t, "diluted", 20/both, diluted(t, x), 1e-6)
	assert.Greater(t, math.Abs(20/both-0.5), 1e-4, "the volumes do not just add")
}

// The same of 10 mL of ethanol as the solute, made up to 50 g.
func TestMixingALiquidSoluteByWeight(t *testing.T) {
	x := recipe{target: "100 g/L", solute: "name = \"ethanol\"\ndensity = \"789.3 kg/m³\"\nspecific-volume = \"1.17 mL/g\"", solvent: "name = \"water\"\ndensity = \"998.201 kg/m³\"",
		steps: `{ measure = "10 mL", with = "10 mL pipette" }, { weigh-up-to = "50.00 g", on = "balance", vessel = "50 g" }, `}
	_, q := equipment.MixAlcohol(10, 1, (50-7.893)/0.998201, 0)
	both, _ := equipment.MixAlcohol(20, q, 20, 0)
	near.Relative(t, "diluted", 20/both, diluted(t, x), 1e-6)
	assert.Greater(t, math.Abs(20/both-0.5), 1e-4, "the volumes do not just add")
}

// The half-width of a tolerance is that to its nearer limit (constructed).
func TestHalfWidthIsToTheNearerLimit(t *testing.T) {
	p := &Prep{Target: strengths.Strength{Value: 10}}
	assert.Zero(t, HalfWidth(p))
	for _, c := range []struct{ low, high, want float64 }{
		{9, 12, 0.1}, {8, 10.5, 0.05}, {9, 11, 0.1}, {8, math.Inf(1), 0.2}, {math.Inf(-1), 13, 0.3}, {10 + 1e-12, 11, 0}, {9, 10 - 1e-12, 0},
	} {
		p.Tolerances = []Tolerance{{Limits: uncertainty.Limits{Lower: c.low, Upper: c.high}}, {}}
		near.Absolute(t, "half-width", c.want, HalfWidth(p), 1e-15)
	}
}
