package plan

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment"
	"minim/uncertainty/near"
	"minim/uncertainty/route"
	"minim/uncertainty/smallbench"
)

// A vial that holds units of activity is used whole, where the target counts them or the
// activity turns them into a mass (constructed): 5000 U in 50 mL are 100 U/mL, and of 25 U/mg
// 4 mg/mL.
func TestVialsInUnits(t *testing.T) {
	for name, prep := range map[string]string{
		"units": "target = \"100 U/mL\"\ntolerance = \"10 % of target\"\n[solute]\nname = \"enzyme\"\n",
		"mass":  "target = \"4 g/L\"\ntolerance = \"10 % of target\"\n[solute]\nname = \"enzyme\"\nactivity = \"25 U/mg\"\n",
	} {
		p := smallbench.On(t, "volume = \"20 mL\"\n"+prep+"[solvent]\nname = \"water\"\n[[packet]]\nname = \"vial\"\ncontent = { from = \"4900 U\", to = \"5100 U\" }\n", smallbench.Measures)
		found := searched(t, p, quick(1))
		require.True(t, found.Verdict.Meets, name)
		steps := found.chosen().Route.Steps
		assert.Equal(t, route.UsePacket, steps[0].Verb, name)
		cylinder := p.Kit.Measures[slices.IndexFunc(p.Kit.Measures, func(k *equipment.Measure) bool { return k.Name == "cylinder" })]
		r, err := p.Assess(&route.Route{Name: "whole", Steps: []route.Step{steps[0], {Verb: route.MakeUpTo, Amount: 50, Measure: cylinder}}}, 0.95)
		require.NoError(t, err)
		require.True(t, r.Possible, r.Reason)
		near.Relative(t, name, p.Target.Value, r.Analytic.Value, 0.002)
	}
}
