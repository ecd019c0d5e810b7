package route

import (
	"context"
	"fmt"
	"math"
	"path/filepath"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty"
)

// ends and a chance of one simulation, with their standard errors where they are stated.
type ends struct{ values, errors [5]float64 }

// endsOf simulates a route with as few trials as may be.
func endsOf(t testing.TB, p *Prep, c *compiler, seed uint64, plain bool) (e ends) {
	t.Helper()
	mc, err := c.model.Simulate(context.Background(), c.strength, uncertainty.Settings{Trials: 10_000, Seed: seed, Plain: plain})
	require.NoError(t, err)
	e.values = [5]float64{mc.Lower, mc.Upper, mc.ShortestLower, mc.ShortestUpper, math.NaN()}
	e.errors = [5]float64{mc.LowerError, mc.UpperError}
	if len(p.Tolerances) > 0 {
		l := p.Tolerances[0].Limits
		e.values[4], e.errors[4] = mc.ConformanceProbability(l), mc.ChanceError(l)
	}
	return e
}

// gains are how many times less each figure of a route scatters over seeds than that of sorted trials, and the
// stated standard errors over the scatter; NaN where the chance is next to 0 or to 1.
func gains(t testing.TB, p *Prep, c *compiler, seeds int) (gain, stated [5]float64) {
	t.Helper()
	var values [2][5][]float64
	var squares [5]float64
	for seed := range uint64(seeds) {
		for k, plain := range []bool{true, false} {
			e := endsOf(t, p, c, seed, plain)
			for i, x := range e.values {
				values[k][i] = append(values[k][i], x)
				squares[i] += e.errors[i] * e.errors[i] / float64(seeds) * float64(k)
			}
		}
	}
	for i := range gain {
		mean, before, _ := uncertainty.Readings(values[0][i])
		_, after, _ := uncertainty.Readings(values[1][i])
		gain[i], stated[i] = before/after, math.Sqrt(squares[i])/after
		if i == 4 && !(0.001 < mean && mean < 0.999) {
			gain[i], stated[i] = math.NaN(), math.NaN()
		}
	}
	return gain, stated
}

// possibleRoutes calls do for each route that can be done of the demo and the benches.
func possibleRoutes(t testing.TB, do func(bench string, p *Prep, r *Route, c *compiler)) {
	t.Helper()
	preps, err := filepath.Glob("../../testdata/benches/*/*.toml")
	require.NoError(t, err)
	for _, path := range append(preps, demoPrep) {
		if filepath.Base(path) == "bench.toml" {
			continue
		}
		p, err := LoadPrep(path, "")
		require.NoError(t, err)
		for _, r := range p.Routes {
			if _, c, err := p.assess(r, 0.95); err == nil && c != nil {
				do(filepath.Base(filepath.Dir(path)), p, r, c)
			}
		}
	}
}

// TestSharpened holds half of the gains that are demanded of the routes of demo and benches, of every fifth:
// five times in the median, twice at least; and that the stated standard errors are those of the scatter.
func TestSharpened(t *testing.T) {
	skipIfSlow(t)
	var all []float64
	n := 0
	possibleRoutes(t, func(bench string, p *Prep, r *Route, c *compiler) {
		if n++; n%5 != 0 {
			return
		}
		gain, stated := gains(t, p, c, 20)
		for i, g := range gain {
			if math.IsNaN(g) {
				continue
			}
			all = append(all, g)
			assert.Greater(t, g, 2.0, "%s, %s: figure %d", bench, r.Name, i)
			if i < 2 {
				assert.True(t, 0.5 < stated[i] && stated[i] < 2, "%s, %s: stated error of end %d over scatter is %v", bench, r.Name, i, stated[i])
			}
		}
	})
	slices.Sort(all)
	assert.Greater(t, len(all), 15)
	assert.Greater(t, all[len(all)/2], 5.0)
}

// BenchmarkSharpened prints the gains of all routes over 50 seeds: lower and upper end, those of the shortest interval,
// and the chance of being inside, each with the stated standard error over the scatter where there is one.
func BenchmarkSharpened(b *testing.B) {
	for b.Loop() {
		var all [5][]float64
		possibleRoutes(b, func(bench string, p *Prep, r *Route, c *compiler) {
			gain, stated := gains(b, p, c, 50)
			fmt.Printf("%-18s %-30s", bench, r.Name)
			for i, g := range gain {
				fmt.Printf(" %6.1f (%4.2f)", g, stated[i])
				if !math.IsNaN(g) {
					all[i] = append(all[i], g)
				}
			}
			fmt.Println()
		})
		for i, what := range []string{"lower", "upper", "shortest lower", "shortest upper", "chance"} {
			slices.Sort(all[i])
			fmt.Printf("%-16s %d routes: %.1f at least, %.1f in the median\n", what, len(all[i]), all[i][0], all[i][len(all[i])/2])
		}
	}
}
