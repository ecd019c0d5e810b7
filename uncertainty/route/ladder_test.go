package route

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty/near"
)

const ladderKit = `
[[pipette]]
name = "pipette"
kind = "piston"
capacity = "5 mL"
standard-uncertainty = "0.01 mL"
repeatability = "0.003 mL"
[[flask]]
name = "flask"
capacity = "10 mL"
standard-uncertainty = "0.02 mL"
reading = "none"
`

const ladderPrep = `
target = "1 g/L"
volume = "10 mL"
ladder = ["0.1 g/L", "0.2 g/L", "0.05 % w/v"]
ladder-with = "pipette"
ladder-in = "flask"
[solute]
name = "solute"
[solvent]
name = "water"
[[stock]]
name = "stock"
strength = { value = "10 g/L", expanded = "1 g/L", k = 2 }
[[route]]
name = "route"
steps = [
{ start = "stock" },
{ take = "1 mL", with = "pipette" },
{ make-up-to = "10 mL", in = "flask" },
]
`

// Closed form, constructed. The rungs take 1, 2 and 5 mL to 10 mL. The stock
// (5 %) and the flask, at one mark each time, cancel in the ratio of neighbours.
// The pipette has s = 0.003 mL in each use, and a bias of 0.01 mL with a common
// and an own part of half the variance each at 1, 2 and 5 mL. So for 2 mL over 1 mL
//
//	u² = 0.003² (1/2² + 1/1²) + 0.01² (½ (1/2 - 1/1)² + ½ (1/2² + 1/1²))
//	   = 1.125e-5 + 1e-4 (0.125 + 0.625) = 8.625e-5
func TestLadder(t *testing.T) {
	r := only(t, parse(t, ladderKit, ladderPrep))
	require.Len(t, r.Ladder, 3)
	for i, want := range []float64{0.1, 0.2, 0.5} {
		rung := r.Ladder[i]
		assert.Empty(t, rung.Reason)
		near.Relative(t, "rung", want, rung.Analytic.Value, 1e-12)
		near.Relative(t, "aliquot", 10*want, rung.TakeML, 1e-12)
		assert.Greater(t, rung.Analytic.StandardUncertainty/rung.Analytic.Value, 0.05, "the stock counts in a rung")
	}
	assert.Nil(t, r.Ladder[0].Ratio)
	near.Relative(t, "ratio", 2, r.Ladder[1].Ratio.Value, 1e-12)
	near.Relative(t, "u of the ratio", math.Sqrt(8.625e-5), r.Ladder[1].Ratio.StandardUncertainty/2, 1e-9)
	near.Relative(t, "ratio", 2.5, r.Ladder[2].Ratio.Value, 1e-12)
}

// The rungs share the 10 mL that the route makes: 4 and 5 mL leave 1 mL.
func TestLadderTakesNoMoreThanIsMade(t *testing.T) {
	strengths := `["0.1 g/L", "0.2 g/L", "0.05 % w/v"]`
	r := only(t, parse(t, ladderKit, strings.Replace(ladderPrep, strengths, `["0.4 g/L", "0.5 g/L", "0.2 g/L", "0.1 g/L"]`, 1)))
	require.Len(t, r.Ladder, 4)
	for i, want := range []string{"", "", "2 mL cannot be taken from the 1 mL that are left", ""} {
		assert.Equal(t, want, r.Ladder[i].Reason.String())
	}
}
