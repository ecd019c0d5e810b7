package plan

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty/route"
	"minim/uncertainty/smallbench"
)

// No route is found that puts more on a balance than it carries, vessel and all (constructed). The bench holds 100 mL, and the scale
// carries 100 g: half of that in glass, four fifths of it in plastic.
func TestSearchKeepsToWhatBalancesCarry(t *testing.T) {
	smallbench.SkipIfSlow(t)
	const prep = "target = \"0.2 % w/v\"\nvolume = \"30 mL\"\ntolerance = \"8 % of target\"\n[solute]\nname = \"x\"\n[solvent]\nname = \"water\"\n"
	const kit = "[[balance]]\nname = \"scale\"\ncapacity = \"100 g\"\nreadability = \"0.01 g\"\n[[balance]]\nname = \"small\"\ncapacity = \"50 g\"\nreadability = \"0.01 g\"\n"
	const vessel = "[[jar]]\nname = \"jar\"\nline = \"79 mL\"\ntolerance = \"9 mL\"\n"
	for material, most := range map[string]float64{"": 50, "material = \"polypropylene\"\n": 79} {
		p := smallbench.On(t, prep, kit+vessel+material)
		found, err := Search(context.Background(), p, quick(1))
		require.NoError(t, err)
		heaviest := 0.0
		for _, m := range found.Front {
			for _, s := range m.Route.Steps {
				assert.NoError(t, p.Carries(s), "%s %v", s.Verb, s.Amount)
				if s.Verb == route.WeighUpTo {
					heaviest = max(heaviest, s.Amount)
				}
			}
		}
		assert.Greater(t, heaviest, 29.0, "some route is made by weighing")
		assert.LessOrEqual(t, heaviest, most)
	}
}
