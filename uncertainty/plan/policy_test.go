package plan

import (
	"context"
	"math"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment"
	"minim/uncertainty"
	read "minim/uncertainty/bench"
	"minim/uncertainty/contest"
	"minim/uncertainty/policy"
	"minim/uncertainty/route"
	"minim/uncertainty/smallbench"
)

// benchesOf are the preps of the demo and of the benches of testdata.
func benchesOf(t *testing.T) []string {
	t.Helper()
	list := []string{"../../cmd/minim/demo/dye.toml"}
	kits, err := filepath.Glob("../../testdata/benches/*/bench.toml")
	require.NoError(t, err)
	for _, kit := range kits {
		files, err := filepath.Glob(filepath.Join(filepath.Dir(kit), "*.toml"))
		require.NoError(t, err)
		list = append(list, slices.DeleteFunc(files, func(path string) bool { return path == kit })...)
	}
	require.Greater(t, len(list), 7)
	return list
}

// The advice makes sense on every bench: what is recommended, written to a file beside the others of
// its list, is what a comparison uses; at most six measurements where four reach half the risk; no
// reading below a fifth of its scale, and none with the last digit of the display, unless
// nothing else of the list with as many measurements meets what it does.
func TestAdviceMakesSense(t *testing.T) {
	if !smallbench.Thorough {
		t.Skip("searches whole benches")
	}
	for _, path := range benchesOf(t) {
		t.Run(filepath.Base(filepath.Dir(path)), func(t *testing.T) {
			p, err := read.LoadPrep(context.Background(), path, "")
			require.NoError(t, err)
			o := quick(route.DefaultSteps)
			o.Prefer, o.Work, o.Settings = route.Usual, 100_000_000, uncertainty.Settings{Seed: 1}
			found := searched(t, p, o)
			usedInComparison(t, found, path)
			senseOf(t, found)
		})
	}
}

// usedInComparison writes the routes to a file as a user does, and compares them.
func usedInComparison(t *testing.T, found *Plan, path string) {
	t.Helper()
	kit, err := os.ReadFile(filepath.Join(filepath.Dir(path), "bench.toml"))
	require.NoError(t, err)
	data, err := read.SaveRoutes(found.Prep.Source, "bench.toml", found.Prep.Routes)
	require.NoError(t, err)
	dir := t.TempDir()
	to := filepath.Join(dir, "found.toml")
	require.NoError(t, os.WriteFile(filepath.Join(dir, "bench.toml"), kit, 0o600))
	require.NoError(t, os.WriteFile(to, data, 0o600))
	p, err := read.LoadPrep(context.Background(), to, "")
	require.NoError(t, err, path)
	c, err := contest.Compare(context.Background(), p, "", found.Settings)
	require.NoError(t, err)
	assert.Equal(t, found.chosen().Route.Name, c.Results[c.Verdict.Use].Route.Name)
	assert.Equal(t, found.Verdict.Choice, c.Verdict.Choice)
}

func senseOf(t *testing.T, found *Plan) {
	t.Helper()
	p, use := found.Prep, found.chosen()
	for i := range found.Results {
		r := &found.Results[i]
		if r.Operations <= 4 && len(p.Tolerances) > 0 && r.Chance() >= p.Ask().Halved() && !p.OutsideIfMisread(r) {
			assert.LessOrEqual(t, use.Operations, 6, r.Route.Name)
		}
	}
	assert.Equal(t, -1, policy.FirstLow(use.Route.Readings()), use.Route.Name)
	for i, s := range use.Route.Steps {
		if s.Balance == nil {
			continue
		}
		ten := 10 * s.Balance.Readability
		for _, m := range []float64{math.Floor(s.Amount/ten) * ten, math.Ceil(s.Amount/ten) * ten} {
			if math.Abs(m-s.Amount) < 1e-9 || m <= 0 || m > s.Balance.Capacity {
				continue
			}
			c, err := route.Evaluate(context.Background(), p, []*route.Route{use.Route.With(i, m)}, found.Settings)
			require.NoError(t, err)
			r := &c.Results[0]
			assert.False(t, p.Better(r, use) && !contest.Elsewhere(p, r), "%s: %v g in place of %v g", use.Route.Name, m, s.Amount)
		}
	}
	for i := range found.Front {
		if r := &found.Front[i].Result; !contest.Elsewhere(p, r) && contest.Elsewhere(p, use) {
			assert.NotEqual(t, r.Operations, use.Operations, "%s aims elsewhere, %s does not", use.Route.Name, r.Route.Name)
		}
	}
	both := func(r *route.Result) bool { return policy.FirstBothWays(r.Route.Readings()) >= 0 }
	for i := range found.Front {
		if r := &found.Front[i].Result; both(use) && !both(r) {
			assert.False(t, p.Better(r, use), "%s pulls both ways, %s does not", use.Route.Name, r.Route.Name)
		}
	}
}

// Readings next to a mass, the roundest first (constructed: 8.1395 g on a balance that reads to
// 0.1 mg, within 2 %; 0.123 g on one that reads to 0.001 g, within 5 %).
func TestRoundings(t *testing.T) {
	fine, coarse := &equipment.Balance{Readability: 0.0001, Capacity: 100}, &equipment.Balance{Readability: 0.001, Capacity: 20}
	assert.Equal(t, []float64{8, 8.1, 8.2, 8.15, 8.14, 8.13, 8.135, 8.139, 8.1395, 8.1391}[:5], Roundings(8.1395, fine, 0.02)[:5])
	assert.Equal(t, []float64{0.12, 0.125, 0.123}, Roundings(0.123, coarse, 0.05)[:3])
	assert.Empty(t, Roundings(0.0004, coarse, 0.05), "nothing that it shows is near")
	for _, m := range Roundings(99.99, fine, 0.5) {
		assert.LessOrEqual(t, m, 100.0)
	}
}

// One route is rounded by itself, with the instruments that it has; it may not lose the chance that
// it has reached (an invented bench).
func TestTunesOneRoute(t *testing.T) {
	p, err := read.LoadPrep(context.Background(), "../../cmd/minim/demo/dye.toml", "")
	require.NoError(t, err)
	o := quick(3)
	o.Prefer, o.From = route.Usual, "two dilutions"
	found := searched(t, p, o)
	before, err := p.Route("two dilutions")
	require.NoError(t, err)
	assert.Equal(t, "two dilutions", before.Name, "the route of the prep keeps its name")
	require.Len(t, found.Results, 1)
	use := found.chosen()
	assert.LessOrEqual(t, policy.RoundnessIn(use.Route.Readings()), policy.RoundnessIn(before.Readings()))
	assert.GreaterOrEqual(t, use.Chance(), p.Ask().Halved())
	for i, s := range use.Route.Steps {
		assert.Equal(t, before.Steps[i].Verb, s.Verb)
		assert.Equal(t, before.Steps[i].Measure, s.Measure)
		assert.Equal(t, before.Steps[i].Balance, s.Balance)
	}
	o.From = "no such route"
	_, err = Search(context.Background(), p, o)
	var unknown *route.UnknownRouteError
	require.ErrorAs(t, err, &unknown)
}
