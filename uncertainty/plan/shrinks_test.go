package plan

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty/route"
	"minim/uncertainty/smallbench"
)

// Strong lye shrinks by 2.6 % when measured water is added to it, which is more than 2.5 % leave: 4 mL and
// 36 mL of water leave nothing over, and are outside; what is recommended is 5 mL made up to 50 mL, which
// holds (constructed: 5 mL of 50 % w/w, 1.525 g/mL, in 50 mL are 7.63 % w/v).
func TestWhatShrinksGivesWayToAMark(t *testing.T) {
	p := smallbench.On(t, `target = "7.6 % w/v"
volume = "40 mL"
tolerance = "2.5 % of target"
solute = { name = "sodium hydroxide" }
solvent = { name = "water" }
stock = [{ name = "bottle", strength = { value = "50 % w/w", expanded = "0.5 % w/w", k = 2 } }]
`, `
pipette = [{ name = "pipette", kind = "one-mark", capacity = "5 mL", class = "A", standard = "ISO" }]
burette = [{ name = "burette", capacity = "50 mL", class = "A", standard = "ISO" }]
flask = [{ name = "flask", capacity = "50 mL", class = "A", standard = "ISO" }]
`)
	o := quick(1)
	o.Prefer = route.Usual
	found := searched(t, p, o)
	use := found.chosen()
	require.Equal(t, 2, use.Operations, use.Route.Name)
	assert.Equal(t, route.MakeUpTo, use.Route.Steps[2].Verb)
	assert.Greater(t, use.Chance(), 0.975)
	shrunk := false
	for _, m := range found.Front {
		for _, s := range m.Analytic.Shifts() {
			if s.Group.Kind == route.Mixing {
				shrunk = true
				assert.Greater(t, s.Sum/m.Analytic.Value, 0.02, "it is stronger for it: %s", m.Route.Name)
				assert.Less(t, m.Chance(), 0.5, m.Route.Name)
			}
		}
	}
	assert.True(t, shrunk, "what was found by factors is worked out as it is")
}
