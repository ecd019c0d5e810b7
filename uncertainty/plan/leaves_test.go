package plan

import (
	"context"
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/report/words/note"
	"minim/uncertainty/route"
	"minim/uncertainty/smallbench"
)

const twoCylinders = "[[balance]]\nname = \"scale\"\ncapacity = \"50 g\"\nreadability = \"0.001 g\"\n" +
	"[[pipette]]\nname = \"pipette\"\nkind = \"graduated\"\ncapacity = \"10 mL\"\nclass = \"B\"\ncount = 2\n[[cylinder]]\nname = \"cylinder\"\ncapacity = \"25 mL\"\nclass = \"B\"\ncount = 2\n"

// What is taken leaves 0.1 mL and a twentieth of itself in each solution of each route that is found (constructed): least is left over
// where 20 mL are made and all of them taken, which no vessel gives.
func TestAnAliquotLeavesSomething(t *testing.T) {
	smallbench.SkipIfSlow(t)
	const prep = "target = \"0.1 % w/v\"\nvolume = \"20 mL\"\ntolerance = \"8 % of target\"\n[solute]\nname = \"x\"\n[solvent]\nname = \"water\"\n[[stock]]\nname = \"stock\"\nstrength = \"30 % w/v\"\n"
	p, taken := smallbench.On(t, prep, twoCylinders), 0
	found, err := Search(context.Background(), p, quick(2))
	require.NoError(t, err)
	for _, m := range found.Front {
		made := 0.0
		for i, s := range m.Route.Steps {
			switch s.Verb {
			case route.Take:
				if made > 0 {
					taken++
					assert.GreaterOrEqual(t, made-s.Amount, 0.1+s.Amount/20-1e-9, "%s, step %d", m.Route.Name, i+1)
				}
				made = s.Amount
			case route.MakeUpTo, route.DissolveIn:
				made = s.Amount
			case route.Add:
				made += s.Amount
			}
		}
	}
	assert.Greater(t, taken, 3)
}

// A route of the prep itself that takes too near to all is told so, and one that goes on with all is not (constructed).
func TestARouteThatTakesNearlyAllIsToldSo(t *testing.T) {
	const prep = "target = \"1 %% w/v\"\nvolume = \"20 mL\"\n[solute]\nname = \"x\"\n[solvent]\nname = \"water\"\n[[route]]\nname = \"r\"\nsteps = [\n" +
		"{ weigh = \"0.24 g\", on = \"scale\" },\n{ make-up-to = \"%v mL\", in = \"cylinder\" },\n{ take = %s },\n{ add = \"4 mL\", with = \"pipette\" }\n]\n"
	with := ", with = \"cylinder\", piece = 2"
	for _, c := range []struct {
		made  float64
		taken string
		said  bool
	}{{20, "\"20 mL\"" + with, true}, {21, "\"20 mL\"" + with, true}, {21.5, "\"20 mL\"" + with, false}, {20, "\"18 mL\"" + with, false}, {20, "\"19 mL\"" + with, true}, {20, "\"all\"", false}} {
		p := smallbench.On(t, fmt.Sprintf(prep, c.made, c.taken), twoCylinders)
		r, err := p.Assess(p.Routes[0], 0.95)
		require.NoError(t, err)
		require.True(t, r.Possible, "%v", r.Reason)
		assert.Equal(t, c.said, slices.ContainsFunc(r.Notes.Warnings, func(n note.Note) bool { return n.Code == "takes-nearly-all" && n.Args[0] == 3 }), "%v of %v", c.taken, c.made)
	}
}

// No solution is planned that hardly dissolves, in the coldest that is stated, unless that is what is wanted, which then is said (constructed).
func TestNoSolutionIsPlannedThatHardlyDissolves(t *testing.T) {
	smallbench.SkipIfSlow(t)
	const prep = "target = \"%s\"\nvolume = \"20 mL\"\ntolerance = \"8 %% of target\"\nbench = { temperature = \"20 °C\", within = \"3 °C\" }\n[solute]\nname = \"x\"\nsolubility = [\"0.24 %% w/v at 17 °C\", \"0.5 %% w/v at 23 °C\"]\n[solvent]\nname = \"water\"\n"
	for target, most := range map[string]float64{"0.2 % w/v": 0.00216, "0.22 % w/v": 0.0024} {
		p := smallbench.On(t, fmt.Sprintf(prep, target), twoCylinders)
		found, err := Search(context.Background(), p, quick(1))
		require.NoError(t, err)
		strongest := 0.0
		for _, m := range found.Front {
			made, err := p.Solutions(m.Route)
			require.NoError(t, err)
			for _, s := range made {
				strongest = max(strongest, s.Concentration)
			}
		}
		assert.LessOrEqual(t, strongest, most*(1+1e-6), target)
		assert.Greater(t, strongest, most*0.9, target)
		assert.Equal(t, most == 0.0024, slices.ContainsFunc(found.chosen().Notes.Warnings, func(n note.Note) bool { return n.Code == "nearly-saturated" }), target)
	}
}
