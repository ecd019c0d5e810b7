package plan

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty/route"
)

// No route is found, and no balance is worth buying for one, that puts more on a balance
// than it carries, vessel and all (constructed). The bench holds 100 mL, and the scale
// carries 100 g: half of that in glass, four fifths of it in plastic.
func TestSearchKeepsToWhatBalancesCarry(t *testing.T) {
	skipIfSlow(t)
	const prep = "target = \"0.2 % w/v\"\nvolume = \"30 mL\"\ntolerance = \"8 % of target\"\n[solute]\nname = \"x\"\n[solvent]\nname = \"water\"\n"
	const kit = "[[balance]]\nname = \"scale\"\ncapacity = \"100 g\"\nreadability = \"0.01 g\"\n[[balance]]\nname = \"small\"\ncapacity = \"50 g\"\nreadability = \"0.01 g\"\n"
	const vessel = "[[jar]]\nname = \"jar\"\nline = \"79 mL\"\ntolerance = \"9 mL\"\n"
	for material, most := range map[string]float64{"": 50, "material = \"polypropylene\"\n": 79} {
		p := prepOn(t, prep, kit+vessel+material)
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
		bought, err := Buy(context.Background(), p, quick(1))
		require.NoError(t, err)
		assert.Equal(t, material != "", bought.Choices[1].Found && byWeight(&bought.Choices[1].Best), "30 g in glass are too much for the small one")
	}
}

func byWeight(r *route.Result) bool {
	return r.Route.Steps[len(r.Route.Steps)-1].Verb == route.WeighUpTo
}

// The least masses of a purchase: USP <41> asks for 2000 s whatever the tolerance is, 2 s
// within 8 % are 25 s (constructed).
func TestLeastMassesOfChoices(t *testing.T) {
	skipIfSlow(t)
	const kit = "[[balance]]\nname = \"scale\"\ncapacity = \"100 g\"\nreadability = \"0.01 g\"\nrepeatability = \"0.01 g\"\n" +
		"[[balance]]\nname = \"small\"\ncapacity = \"19 g\"\nreadability = \"0.01 g\"\nrepeatability = \"0.01 g\"\n[[cylinder]]\nname = \"c\"\ncapacity = \"25 mL\"\nclass = \"B\"\n"
	const prep = "target = \"2 % w/v\"\nvolume = \"20 mL\"\n[solute]\nname = \"x\"\n[solvent]\nname = \"water\"\n"
	bought, err := Buy(context.Background(), prepOn(t, "tolerance = \"8 % of target\"\n"+prep, kit), quick(0))
	require.NoError(t, err)
	assert.InDelta(t, 20.0, bought.Choices[0].LeastByUSP, 1e-9)
	assert.InDelta(t, 0.25, bought.Choices[0].LeastWithin, 1e-9)
	assert.Zero(t, bought.Choices[1].LeastByUSP, "it carries less")
	assert.InDelta(t, 0.25, bought.Choices[1].LeastWithin, 1e-9)
	bought, err = Buy(context.Background(), prepOn(t, prep, kit), quick(0))
	require.NoError(t, err)
	assert.InDelta(t, 20.0, bought.Choices[0].LeastByUSP, 1e-9, "it is no matter of the tolerance")
	assert.Zero(t, bought.Choices[0].LeastWithin)
}
