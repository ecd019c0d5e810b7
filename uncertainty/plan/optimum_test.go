package plan

import (
	"testing"

	"github.com/stretchr/testify/require"

	"minim/uncertainty/near"
	"minim/uncertainty/route"
	"minim/uncertainty/smallbench"
)

// TestOneWayInTwoDilutions: with volumes in tens of mL and a beaker of 100 mL, 49 000 can be made
// of 100 000 in exactly one way in two dilutions (NRICH, "Ratios and Dilutions"): 70 in 100 mL,
// twice.
func TestOneWayInTwoDilutions(t *testing.T) {
	p := smallbench.On(t, `target = "49 g/L"
volume = "30 mL"
tolerance = "0.02 % of target"
bench = { temperature = "20 °C", within = "0 °C" }
[solute]
name = "cells"
[solvent]
name = "water"
[[stock]]
name = "stock"
strength = "100 g/L"
`, `[[pipette]]
name = "measure"
kind = "graduated"
capacity = "100 mL"
numbered = "10 mL"
division = "10 mL"
standard-uncertainty = "0.0001 mL"
reading = "none"
[[cylinder]]
name = "beaker"
capacity = "100 mL"
numbered = "10 mL"
division = "10 mL"
standard-uncertainty = "0.0001 mL"
reading = "none"
`)
	found := searched(t, p, quick(2))
	require.NotEmpty(t, found.Front)
	for i := range found.Front {
		var amounts []float64
		for _, s := range found.Front[i].Route.Steps[1:] {
			amounts = append(amounts, s.Amount)
		}
		require.Equal(t, []float64{70, 100, 70, 100}, amounts)
	}
	require.False(t, searched(t, p, quick(1)).Verdict.Meets, "in one dilution there is none")
}

// TestTightestIsTheTightest: where the least give or take is preferred, it is recommended however
// easy the tolerance is, with the same set and two pieces of each (see above).
func TestTightestIsTheTightest(t *testing.T) {
	p := smallbench.On(t, "target = \"0.001 mol/L\"\nvolume = \"400 mL\"\ntolerance = \"1 % of target\"\nbench = { temperature = \"20 °C\", within = \"0 °C\" }\n"+
		"[solute]\nname = \"salt\"\nmolar-mass = \"58.44 g/mol\"\n[solvent]\nname = \"water\"\n[[stock]]\nname = \"stock\"\nstrength = \"1 mol/L\"\n", smallbench.Glass(smallbench.Harvey, 2))
	o := quick(2)
	o.Prefer = route.Tightest
	tightest := searched(t, p, o).chosen()
	near.Absolute(t, "the tightest", 0.0018520, tightest.Analytic.StandardUncertainty/tightest.Analytic.Value, 5.1e-8)
}
