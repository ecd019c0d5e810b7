package plan

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty"
	read "minim/uncertainty/bench"
	"minim/uncertainty/route"
)

// What would help is told by chances of the same kind as that of the route it would help,
// which are simulated: of 10 000 batches so many are inside, a whole number.
func TestHelpsAreSimulated(t *testing.T) {
	k, err := read.ParseKit("kit", []byte(`shape = "rectangular"
[[balance]]
name = "scale"
capacity = "100 g"
readability = "0.1 g"
[[flask]]
name = "flask"
capacity = "100 mL"
class = "B"
`))
	require.NoError(t, err)
	p, err := read.ParsePrep("prep", []byte(`target = "1 % w/v"
volume = "100 mL"
tolerance = "5 % of target"
[solute]
name = "exemplate"
[solvent]
name = "water"
`), k)
	require.NoError(t, err)
	o := Options{Limits: route.Limits{Steps: 0}, Settings: uncertainty.Settings{Trials: 10_000, Seed: 1, Plain: true}}
	found, err := Search(context.Background(), p, o)
	require.NoError(t, err)
	require.False(t, found.Verdict.Meets)
	require.NotEmpty(t, found.Helps)
	for _, h := range found.Helps {
		inside := h.Chance * 10_000
		assert.InDelta(t, math.Round(inside), inside, 1e-6, "%+v", h)
		assert.GreaterOrEqual(t, h.Chance, found.chosen().Chance()+Noticed)
	}
}
