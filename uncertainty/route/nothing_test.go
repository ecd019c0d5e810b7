package route

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty"
)

// A strength whose interval reaches nothing says almost nothing, at the coverage probability
// that is asked for: of a stock that is known within 80 % with k = 2, in the interval of 99 %, and
// not in that of 95 % (constructed).
func TestStrengthThatCouldBeNothing(t *testing.T) {
	p := parse(t, `
[[pipette]]
name = "pipette"
kind = "one-mark"
capacity = "1 mL"
class = "A"
standard = "ISO"
[[flask]]
name = "flask"
capacity = "10 mL"
class = "A"
standard = "ISO"
`, `
target = "1 g/L"
volume = "10 mL"
solute = { name = "dye" }
solvent = { name = "water" }
[[stock]]
name = "stock"
strength = { value = "10 g/L", expanded = "8.4 g/L", k = 2 }
[[route]]
name = "one"
steps = [ { start = "stock" }, { take = "1 mL", with = "pipette" }, { make-up-to = "10 mL", in = "flask" } ]
`)
	for coverage, informative := range map[float64]bool{0.95: true, 0.99: false} {
		c, err := Compare(context.Background(), p, "", uncertainty.Settings{Trials: 20_000, Coverage: coverage})
		require.NoError(t, err)
		r := &c.Results[0]
		require.True(t, r.Possible)
		assert.Equal(t, informative, r.Informative, "%v: %v to %v", coverage, r.Quoted.Lower, r.Quoted.Upper)
		assert.Equal(t, informative, r.Quoted.Lower > 0)
		if !informative {
			assert.Equal(t, "strength-nothing", r.Uninformative.Code)
			assert.Contains(t, r.Uninformative.String(), "g/L, could be nothing at all")
		}
	}
}

// A mass that two readings tell of beside other errors is uninformative where its interval
// reaches nothing, as simulated, though by effective degrees of freedom it would not (constructed).
func TestMassOfTwoReadingsThatCouldBeNothing(t *testing.T) {
	kit := `
[[balance]]
name = "scale"
capacity = "100 g"
readability = "0.001 g"
readings = ["1.000 g", "1.005 g"]
linearity = "0.01 g"
[[flask]]
name = "flask"
capacity = "10 mL"
class = "A"
standard = "ISO"
`
	p := parse(t, kit, `
target = "2.5 g/L"
volume = "10 mL"
solute = { name = "dye" }
solvent = { name = "water" }
[[route]]
name = "one"
steps = [ { weigh = "0.025 g", on = "scale" }, { make-up-to = "10 mL", in = "flask" } ]
`)
	r, err := p.Assess(p.Routes[0], 0.95)
	require.NoError(t, err)
	assert.Positive(t, r.Analytic.Lower())
	assert.False(t, r.Informative)
	assert.Equal(t, "weighs-nothing", r.Uninformative.Code)
}
