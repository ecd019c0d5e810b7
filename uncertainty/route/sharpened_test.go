package route

import (
	"context"
	"fmt"
	"math"
	"path/filepath"
	"slices"
	"strings"
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

// possibleRoutes calls do for each route that can be done of the demo and the benches, and of the preps that
// testdata/independent works out.
func possibleRoutes(t testing.TB, do func(bench string, p *Prep, r *Route, c *compiler)) {
	t.Helper()
	preps, err := filepath.Glob("../../testdata/benches/*/*.toml")
	require.NoError(t, err)
	more, err := filepath.Glob("../../testdata/" + independentPreps + "/*-routes.toml")
	require.NoError(t, err)
	for _, path := range append(append(preps, demoPrep), more...) {
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

// independentPreps is the folder of those.
const independentPreps = "preps"

// What a route has that keeps its linear part from being a sum of independent quantities of few kinds.
const (
	sharedScale = "uses that share one unknown scale"
	posterior   = "errors tabulated by own readings"
	curve       = "the curve of a balance"
)

// groupsOf are those that a route belongs to.
func groupsOf(t testing.TB, c *compiler) (groups []string) {
	t.Helper()
	a, err := c.model.Propagate(c.strength, 0.95)
	require.NoError(t, err)
	has := make(map[string]bool)
	uses := make(map[uncertainty.Set]int)
	for _, in := range a.Budget {
		_, tabulated := in.Distribution.(uncertainty.Tabulated)
		has[posterior] = has[posterior] || tabulated
		has[curve] = has[curve] || strings.HasPrefix(string(in.Code), "curve of linearity")
		if in.Set != (uncertainty.Set{}) {
			uses[in.Set]++
			has[sharedScale] = has[sharedScale] || uses[in.Set] > 1
		}
	}
	for _, group := range []string{sharedScale, posterior, curve} {
		if has[group] {
			groups = append(groups, group)
		}
	}
	return groups
}

var figures = [5]string{"lower", "upper", "shortest lower", "shortest upper", "chance"}

// isNear reports whether a stated standard error is that of the scatter, which is as good as none where the gain is so great
// that what is left is what the table of a law is off by.
func isNear(gain, stated, most float64) bool {
	return gain > 10_000 || 1/most < stated && stated < most
}

// TestSharpened holds half of the gains that are demanded of the routes of demo and benches, of every fifth and of the one that
// gains least by the law of the output alone: five times in the median, twice at least; and that the stated standard errors
// are those of the scatter.
func TestSharpened(t *testing.T) {
	skipIfSlow(t)
	var all []float64
	n := 0
	possibleRoutes(t, func(bench string, p *Prep, r *Route, c *compiler) {
		if n++; n%5 != 0 && r.Name != "whole sachet" {
			return
		}
		gain, stated := gains(t, p, c, 20)
		for i, g := range gain {
			if math.IsNaN(g) {
				continue
			}
			all = append(all, g)
			assert.Greater(t, g, 2.0, "%s, %s: %s", bench, r.Name, figures[i])
			if i < 2 || i == 4 {
				assert.True(t, isNear(g, stated[i], 2), "%s, %s: stated error of %s over scatter is %v", bench, r.Name, figures[i], stated[i])
			}
		}
	})
	slices.Sort(all)
	assert.Greater(t, len(all), 15)
	assert.Greater(t, all[len(all)/2], 5.0)
}

// gainsOf collects the gains of routes.
type gainsOf [len(figures)][]float64

func (g *gainsOf) add(gain [len(figures)]float64) {
	for i, x := range gain {
		if !math.IsNaN(x) {
			g[i] = append(g[i], x)
		}
	}
}

// print tells them, and fails where they are not what is demanded.
func (g *gainsOf) print(b *testing.B, of string, least, median float64) {
	b.Helper()
	fmt.Println(of)
	for i, what := range figures {
		if slices.Sort(g[i]); len(g[i]) == 0 {
			continue // no chance that is not next to 0 or to 1
		}
		fmt.Printf("  %-16s %d routes: %.1f at least, %.1f in the median\n", what, len(g[i]), g[i][0], g[i][len(g[i])/2])
		if !testing.Short() {
			assert.GreaterOrEqual(b, g[i][0], least, "%s, %s", of, what)
			assert.GreaterOrEqual(b, g[i][len(g[i])/2], median, "%s, %s", of, what)
		}
	}
}

// BenchmarkSharpened prints the gains of all routes over 50 seeds: lower and upper end, those of the shortest interval, and
// the chance of being inside, each with the stated standard error over the scatter where there is one. Of demo and benches
// ten times are demanded in the median, four at least, of routes with what is in the way of a law three times, and that what
// is stated is between 0.67 and 1.5 of the scatter.
func BenchmarkSharpened(b *testing.B) {
	seeds := 50
	if testing.Short() {
		seeds = 8
	}
	for b.Loop() {
		groups := make(map[string]*gainsOf)
		possibleRoutes(b, func(bench string, p *Prep, r *Route, c *compiler) {
			gain, stated := gains(b, p, c, seeds)
			fmt.Printf("%-18s %-30s", bench, r.Name)
			for i, g := range gain {
				fmt.Printf(" %7.1f", g)
				if stated[i] > 0 {
					fmt.Printf(" (%4.2f)", stated[i])
					if !testing.Short() {
						assert.True(b, isNear(g, stated[i], 1.5), "%s, %s: stated error of %s over scatter is %v", bench, r.Name, figures[i], stated[i])
					}
				}
			}
			fmt.Println()
			in := groupsOf(b, c)
			if bench != independentPreps {
				in = append(in, "demo and benches")
			}
			for _, group := range in {
				if groups[group] == nil {
					groups[group] = new(gainsOf)
				}
				groups[group].add(gain)
			}
		})
		groups["demo and benches"].print(b, "demo and benches", 4, 10)
		for _, group := range []string{sharedScale, posterior, curve} {
			groups[group].print(b, group, 3, 3)
		}
	}
}
