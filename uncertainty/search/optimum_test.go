package search

import (
	"context"
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"minim/uncertainty/near"
	"minim/uncertainty/route"
	"minim/uncertainty/smallbench"
)

// TestLeastRelativeUncertainty: the least relative standard uncertainty of a dilution of a
// stock to the marks of pipettes and flasks, in one to three steps. With the set of Harvey and
// pieces of one's own the textbook's choice, 0.0019849 printed as 0.002, is not the least
// (Harvey, Analytical Chemistry 2.0, example 4.9, p. 83, of which the instruments are; the
// optima were enumerated outside the project).
func TestLeastRelativeUncertainty(t *testing.T) {
	for _, c := range []struct {
		set             map[string]map[float64]float64
		dilution, steps int
		pieces          int
		want            float64
	}{
		{smallbench.Harvey, 1000, 1, 3, 0.0060075}, {smallbench.Harvey, 1000, 2, 3, 0.0018520}, {smallbench.Harvey, 1000, 2, 1, 0.0019000}, {smallbench.Harvey, 1000, 3, 3, 0.0018655},
		{smallbench.Harvey, 100, 1, 3, 0.0020224}, {smallbench.Harvey, 100, 2, 3, 0.0015232}, {smallbench.Harvey, 100, 3, 3, 0.0023854},
		{smallbench.Harvey, 50, 1, 3, 0.0015297}, {smallbench.Harvey, 50, 2, 3, 0.0020125}, {smallbench.Harvey, 20, 1, 3, 0.0010440}, {smallbench.Harvey, 20, 2, 3, 0.0016733},
		{smallbench.ISO, 50, 1, 3, 0.0006338}, {smallbench.ISO, 50, 2, 3, 0.0006595}, {smallbench.ISO, 100, 1, 3, 0.0008327}, {smallbench.ISO, 100, 2, 3, 0.0006455},
		{smallbench.ISO, 1000, 1, 3, 0.0032701}, {smallbench.ISO, 1000, 2, 3, 0.0007714},
	} {
		p := diluted(t, c.dilution, c.set, c.pieces)
		b, err := NewBench(p, quick(c.steps))
		require.NoError(t, err)
		b.dilutions = slices.DeleteFunc(b.dilutions, func(m making) bool { return m.measured })
		j := tightness(p, b.coverage)
		j.worthOnly = true
		list, err := only(b, quick(c.steps), j, c.steps).result(context.Background())
		require.NoError(t, err)
		best := list[0].Analytic.StandardUncertainty / list[0].Analytic.Value
		for i := range list {
			best = min(best, list[i].Analytic.StandardUncertainty/list[i].Analytic.Value)
		}
		near.Absolute(t, fmt.Sprintf("1 in %d, %d steps, %d pieces", c.dilution, c.steps, c.pieces), c.want, best, 5.1e-8)
	}
}

// diluted wants so many times less than a stock has, on a set of glass.
func diluted(t *testing.T, times int, set map[string]map[float64]float64, pieces int) *route.Prep {
	prep := fmt.Sprintf("target = \"%v mol/L\"\nvolume = \"1 mL\"\nbench = { temperature = \"20 °C\", within = \"0 °C\" }\n", 1/float64(times)) +
		"[solute]\nname = \"salt\"\nmolar-mass = \"58.44 g/mol\"\n[solvent]\nname = \"water\"\n[[stock]]\nname = \"stock\"\nstrength = \"1 mol/L\"\n"
	return smallbench.On(t, prep, smallbench.Glass(set, pieces))
}

// TestLeastByWeighing: on a balance with a standard uncertainty of 0.002 g for each mass, a
// hundredfold dilution to 100 g is 0.0020000 in one step and 0.00028425 as 10 g twice (puzzle of
// Meija 2016; closed forms, √n √(u²/m² + u²/M²)). The least of all, seven equal steps, is of no
// round masses.
func TestLeastByWeighing(t *testing.T) {
	for steps, want := range map[int]float64{1: 0.0020000, 2: 0.00028425} {
		p := onePuzzle(t)
		b, err := NewBench(p, quick(steps))
		require.NoError(t, err)
		b.sources = slices.DeleteFunc(b.sources, func(s source) bool { return !s.isStock() })
		require.NoError(t, b.bound())
		j := tightness(p, b.coverage)
		j.worthOnly = true
		list, err := newSearch(b, quick(steps), j).result(context.Background())
		require.NoError(t, err)
		require.NotEmpty(t, list)
		near.Relative(t, fmt.Sprintf("%d steps", steps), want, list[0].Analytic.StandardUncertainty/list[0].Analytic.Value, 5e-4)
	}
}

// onePuzzle is a balance with a standard uncertainty of 0.002 g, and a stock.
func onePuzzle(t *testing.T) *route.Prep {
	return smallbench.On(t, `target = "0.1 % w/w"
volume = "99 mL"
tolerance = "5 % of target"
[solute]
name = "salt"
hazards = ["none"]
specific-volume = "0.5 mL/g"
[solvent]
name = "water"
density = "1 g/mL"
[[stock]]
name = "stock"
strength = "10 % w/w"
`, `[[balance]]
name = "balance"
capacity = "400 g"
readability = "0.001 g"
weighing-uncertainty = "0.002 g"
[[flask]]
name = "bottle"
capacity = "100 mL"
class = "A"
`)
}
