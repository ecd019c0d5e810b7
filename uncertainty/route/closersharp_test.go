package route

import (
	"context"
	"fmt"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty"
)

// quantitiesOf are the strengths of all routes of a prep that can be done, with their names.
func quantitiesOf(t testing.TB, path string) (p *Prep, names []string, quantities []uncertainty.Quantity) {
	t.Helper()
	p, err := LoadPrep(path, "")
	require.NoError(t, err)
	for _, r := range p.Routes {
		if _, c, err := p.assess(r, 0.95); err == nil && c != nil {
			names, quantities = append(names, r.Name), append(quantities, uncertainty.Quantity{Model: c.model, Node: c.strength})
		}
	}
	return p, names, quantities
}

// closerGain is how many times less the chance that one route comes closer than another scatters over seeds than by
// counting as many trials, the fewest; NaN where it is next to 0 or to 1.
func closerGain(t testing.TB, target float64, first, other uncertainty.Quantity, seeds int) (chance, gain float64) {
	t.Helper()
	var values [2][]float64
	for seed := range uint64(seeds) {
		for k, plain := range []bool{true, false} {
			chances, err := uncertainty.CloserTo(context.Background(), target, []uncertainty.Quantity{first, other}, uncertainty.Settings{Trials: 10_000, Seed: seed, Plain: plain})
			require.NoError(t, err)
			values[k] = append(values[k], chances[1])
		}
	}
	chance, before, _ := uncertainty.Readings(values[0])
	_, after, _ := uncertainty.Readings(values[1])
	if !(0.001 < chance && chance < 0.999) {
		return chance, math.NaN()
	}
	return chance, before / after
}

// TestCloserSharpened holds half of the gains that are wanted of the pairs of the demo's routes with one of them: five times in
// the median, twice at least.
func TestCloserSharpened(t *testing.T) {
	skipIfSlow(t)
	p, names, quantities := quantitiesOf(t, demoPrep)
	var all []float64
	for i := range quantities[1:] {
		_, gain := closerGain(t, p.Target.Value, quantities[0], quantities[i+1], 20)
		if !math.IsNaN(gain) {
			all = append(all, gain)
			assert.Greater(t, gain, 2.0, names[i+1])
		}
	}
	slices.Sort(all)
	assert.Greater(t, len(all), 3)
	assert.Greater(t, all[len(all)/2], 5.0)
}

// BenchmarkCloser prints the gains of all pairs of the demo's routes over 50 seeds.
func BenchmarkCloser(b *testing.B) {
	seeds := 50
	if testing.Short() {
		seeds = 4
	}
	for b.Loop() {
		p, names, quantities := quantitiesOf(b, demoPrep)
		var all []float64
		for i := range quantities {
			for j := range quantities {
				if i == j {
					continue
				}
				chance, gain := closerGain(b, p.Target.Value, quantities[i], quantities[j], seeds)
				fmt.Printf("%-24s closer than %-24s in %5.1f of 100: %6.1f\n", names[j], names[i], 100*chance, gain)
				if !math.IsNaN(gain) {
					all = append(all, gain)
				}
			}
		}
		slices.Sort(all)
		fmt.Printf("%d pairs: %.1f at least, %.1f in the median\n", len(all), all[0], all[len(all)/2])
	}
}
