package contest_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment"
	"minim/uncertainty/contest"
	"minim/uncertainty/route"
	"minim/uncertainty/smallbench"
)

// A solution on the way may be as strong as nine tenths of what dissolves; where more than that is wanted, as strong as it, and
// never stronger than is allowed (constructed, with a solubility of 2 % w/v).
func TestStrongest(t *testing.T) {
	const prep = "target = \"%v %% w/v\"\nvolume = \"20 mL\"\n[solute]\nname = \"x\"\nsolubility = \"2 %% w/v\"\n[solvent]\nname = \"water\"\n"
	for target, most := range map[float64]float64{0.1: 0.018, 1.79: 0.018, 1.81: 0.02, 1.99: 0.02} {
		p := smallbench.On(t, fmt.Sprintf(prep, target), smallbench.Kit)
		assert.InDelta(t, most, contest.Strongest(p, route.Limits{}), 1e-9, "%v", target)
		assert.InDelta(t, 0.01, contest.Strongest(p, route.Limits{Strongest: 0.01}), 1e-9, "%v", target)
	}
}

// A route leaves enough of what it takes from where the step that does not was made already (constructed).
func TestLeavesEnough(t *testing.T) {
	const prep = "target = \"1 % w/v\"\nvolume = \"5 mL\"\n[solute]\nname = \"x\"\n[solvent]\nname = \"water\"\n"
	p := smallbench.On(t, prep, smallbench.Kit)
	scale, pipette, cylinder := p.Kit.Balances[0], p.Kit.Measure("pipette"), p.Kit.Measure("cylinder")
	for _, c := range []struct {
		taken  float64
		made   int
		leaves bool
	}{{5, 0, false}, {5, 2, false}, {5, 3, true}, {4.5, 0, true}, {4.8, 2, false}, {4.8, 3, true}} {
		r := &route.Route{Name: "r", Made: c.made, Steps: []route.Step{
			{Verb: route.Weigh, Balance: scale, Amount: 0.1}, {Verb: route.MakeUpTo, Measure: cylinder, Amount: 5},
			{Verb: route.Take, Measure: pipette, Amount: c.taken}, {Verb: route.Add, Measure: cylinder, Amount: 5},
		}}
		a, err := p.Assess(r, 0.95)
		require.NoError(t, err)
		require.True(t, a.Possible, "%v", a.Reason)
		assert.Equal(t, c.leaves, contest.LeavesEnough(&a), "%v", c)
	}
	assert.InDelta(t, 0.35, equipment.KeptBack(5), 1e-12)
	assert.InDelta(t, 1.1, equipment.KeptBack(20), 1e-12)
}
