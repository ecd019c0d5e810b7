package route

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Constructed: 0.1 mL and 0.2 mL are 0.30000000000000004 mL in binary fractions (IEEE 754),
// of which 0.3 mL are wanted and nothing is left over; so it is when all of it is taken.
func TestNothingIsLeftOverByRounding(t *testing.T) {
	k, err := ParseKit("kit", []byte(`[[pipette]]
name = "pipette"
kind = "graduated"
capacity = "1 mL"
division = "0.1 mL"
tolerance = "0.01 mL"
`))
	require.NoError(t, err)
	const head = `volume = "0.3 mL"
[solute]
name = "exemplate"
[solvent]
name = "water"
[[stock]]
name = "strong"
strength = "30 g/L"
[[route]]
name = "route"
steps = [ { start = "strong" }, { take = "0.1 mL", with = "pipette" }, { add = "0.2 mL", with = "pipette" }`
	p, err := ParsePrep("prep", []byte("target = \"10 g/L\"\n"+head+" ]\n"), k)
	require.NoError(t, err)
	r, err := p.Assess(p.Routes[0], 0.95)
	require.NoError(t, err)
	require.True(t, r.Possible, r.Reason)
	assert.Equal(t, 0.0, r.LeftOverML)

	p, err = ParsePrep("prep", []byte("target = \"5 g/L\"\n"+head+`, { take = "0.3 mL", with = "pipette" }, { add = "0.3 mL", with = "pipette" } ]`), k)
	require.NoError(t, err)
	solutions, err := p.Solutions(p.Routes[0])
	require.NoError(t, err)
	assert.Equal(t, 0.0, solutions[0].LeftML)
}
