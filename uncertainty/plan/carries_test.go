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

// A kit of balances alone is planned; where the volume is too heavy for each, that is why there is no route, and not that there
// is no vessel (constructed).
func TestABenchOfBalancesTooSmall(t *testing.T) {
	const prep = "target = \"1 % w/v\"\nvolume = \"50 mL\"\ntolerance = \"5 % of target\"\n[solute]\nname = \"x\"\n[solvent]\nname = \"water\"\n"
	balance := func(name, capacity string) string {
		return "[[balance]]\nname = \"" + name + "\"\ncapacity = \"" + capacity + "\"\nreadability = \"0.001 g\"\n"
	}
	for kit, reason := range map[string]string{
		balance("B", "20 g"):                        "50.255 g is more than the B carries: 20 g",
		balance("B", "40 g"):                        "50.255 g is more than the B carries: 40 g",
		balance("A", "10 g") + balance("B", "20 g"): "50.255 g is more than the B carries: 20 g",
		balance("B", "20 g") + balance("A", "10 g"): "50.255 g is more than the B carries: 20 g",
		balance("B", "100 g"):                       "50.255 g in a vessel of 50.3 g (assumed of glass as heavy as the water that it holds; where it is lighter, state vessel = \"… g\" in the step) is more than the B carries: 100 g",
		balance("B", "20 g") + "[[cylinder]]\nname = \"c\"\ncapacity = \"10 mL\"\ndivision = \"0.2 mL\"\ntolerance = \"0.1 mL\"\n": "50 mL are wanted, and the largest vessel holds 10 mL",
	} {
		_, err := Search(context.Background(), smallbench.On(t, prep, kit), quick(1))
		var none *NoRouteError
		require.ErrorAs(t, err, &none)
		assert.Equal(t, reason, none.Reason.String())
	}
}
