package equipment

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty"
	"minim/uncertainty/near"
)

// A correction is added to what is read (VIM 2.53); its standard uncertainty is U/k
// (GUM 4.3.3). What is expected moves by it, with its sign; what was intended is
// still the mark. The class of the piece no longer counts.
func TestCorrection(t *testing.T) {
	for text, value := range map[string]float64{"0.03 mL": 0.03, "-0.03 mL": -0.03, "0 mL": 0, "-30 µL": -0.03} {
		k := one(t, oneFlask+"class = \"A\"\nclinging = \"0 mL\"\ncorrection = { value = \""+text+"\", expanded = \"0.01 mL\", k = 2 }\n")
		got := contained(t, k, quiet(), 10)
		near.Relative(t, "expected", 10+value, got.Value, 1e-12)
		assert.Equal(t, 10.0, got.Intended)
		near.Relative(t, "u", 0.005, got.StandardUncertainty, 1e-12)
		assert.Equal(t, 1, len(got.Budget))
		assert.Equal(t, uncertainty.Normal{Mu: value, Sigma: 0.005}, got.Budget[0].Distribution)
	}
}

// EURACHEM/CITAC CG 4, A1, gives ±0.1 mL for a flask; a certificate of +0.05 mL with
// U = 0.02 mL, k = 2 (invented) says more: 100.05 mL with u = 0.01 instead of 0.041 mL.
func TestCorrectionAgainstTolerance(t *testing.T) {
	const head = "[[flask]]\nname = \"x\"\ncapacity = \"100 mL\"\nclinging = \"0 mL\"\n"
	limit := contained(t, one(t, head+"tolerance = \"0.1 mL\""), quiet(), 100)
	near.Absolute(t, "by its limit", 0.041, limit.StandardUncertainty, 5e-4)
	known := contained(t, one(t, head+`correction = { value = "0.05 mL", expanded = "0.02 mL", k = 2 }`), quiet(), 100)
	near.Relative(t, "by certificate", 100.05, known.Value, 1e-12)
	near.Relative(t, "u", 0.01, known.StandardUncertainty, 1e-12)
}

// A correction is one quantity of the piece, at every mark.
func TestCorrectionIsThePieces(t *testing.T) {
	k := one(t, oneCylinder+"division = \"0.2 mL\"\nclinging = \"0 mL\"\nretained = \"0 mL\"\ncorrection = { value = \"0.1 mL\", expanded = \"0.04 mL\", k = 2 }\n")
	u := quiet()
	u.Marks = 2
	low, err := k.Contain(u.next("a"), 4)
	require.NoError(t, err)
	high := node(t, k, u, "b", 10)
	near.Relative(t, "correlation", 1, correlation(t, u, low, high), 1e-9)
	near.Relative(t, "difference", 6, u.Model.Expected(u.Model.Subtract(high, low)), 1e-12)
	second := u.next("c")
	k.Count, second.Piece = 2, 2
	other, err := k.Contain(second, 4)
	require.NoError(t, err)
	near.Absolute(t, "another piece", 0, correlation(t, u, low, other), 1e-12)
}

// An odd size needs no class when a certificate says how good it is.
func TestCorrectionOfAnOddSize(t *testing.T) {
	for _, head := range []string{"[[syringe]]\nname = \"x\"\ncapacity = \"7 mL\"\n", "[[flask]]\nname = \"x\"\ncapacity = \"7 mL\"\nclass = \"A\"\n"} {
		k := one(t, head+`correction = { value = "0.1 mL", expanded = "0.04 mL", k = 2 }`)
		near.Relative(t, head, 7.1, k.once(7).Value, 1e-12)
	}
}

// The ways to state a limit, in mL at 4 and 10 mL of a 10 mL cylinder.
func TestOwnLimits(t *testing.T) {
	for text, want := range map[string][2]float64{
		`tolerance = "0.15 mL"`:           {0.15, 0.15},
		`tolerance = "1.5 % of capacity"`: {0.15, 0.15},
		`tolerance = "1.5 % of reading"`:  {0.06, 0.15},
		`tolerance = "0 mL"`:              {0, 0},
	} {
		k := one(t, oneCylinder+"division = \"0.2 mL\"\nclinging = \"0 mL\"\nshape = \"rectangular\"\n"+text)
		for i, mark := range []float64{4, 10} {
			got := contained(t, k, quiet(), mark)
			near.Absolute(t, text, want[i]/math.Sqrt(3), got.StandardUncertainty, 1e-12)
			near.Absolute(t, text, want[i], k.Limit(mark), 1e-12)
		}
	}
	// A share of the reading is one error of the piece; a limit of volume is one at
	// each mark, 1/2 correlated.
	for text, r := range map[string]float64{`tolerance = "1.5 % of reading"`: 1, `tolerance = "1.5 % of capacity"`: 0.5} {
		k, u := one(t, oneCylinder+"division = \"0.2 mL\"\nclinging = \"0 mL\"\nretained = \"0 mL\"\n"+text), quiet()
		u.Marks = 2
		near.Relative(t, text, r, correlation(t, u, node(t, k, u, "a", 4), node(t, k, u, "b", 10)), 1e-9)
	}
}
