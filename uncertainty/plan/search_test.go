package plan

import (
	"context"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment/quantity"
	"minim/report/words/note"
	"minim/uncertainty"
	read "minim/uncertainty/bench"
	"minim/uncertainty/near"
	"minim/uncertainty/route"
	"minim/uncertainty/smallbench"
)

// quick options for up to so many dilutions.
func quick(steps int) Options {
	return Options{Limits: route.Limits{Steps: steps}, Settings: uncertainty.Settings{Trials: 10_000, Seed: 1}}
}

func searched(t testing.TB, p *route.Prep, o Options) *Plan {
	t.Helper()
	found, err := Search(context.Background(), p, o)
	require.NoError(t, err)
	return found
}

// TestHarveyExample49: Harvey, Analytical Chemistry 2.0, example 4.9, p. 83: of the
// ways to dilute 1.0 mol/L to 0.0010 mol/L with these pipettes and flasks, the two
// steps 20 mL to 1000 mL and 25 mL to 500 mL have the least relative uncertainty,
// 0.002 (0.0019849433 recomputed); one step from 1 mL to 1000 mL has 0.006
// (0.0060074953).
func TestHarveyExample49(t *testing.T) {
	p, err := read.LoadPrep(context.Background(), "../../testdata/published/harvey/dilution.toml", "")
	require.NoError(t, err)
	o := quick(2)
	o.Prefer = route.Tightest
	found := searched(t, p, o)
	use := found.chosen()
	require.Len(t, use.Route.Steps, 5)
	var amounts []float64
	for _, s := range use.Route.Steps[1:] {
		amounts = append(amounts, s.Amount)
	}
	assert.Equal(t, []float64{20, 1000, 25, 500}, amounts)
	near.Relative(t, "two steps", 0.0019849433, use.Analytic.StandardUncertainty/use.Analytic.Value, 5e-8)
	one := searched(t, p, quick(1)).chosen()
	near.Relative(t, "one step", 0.0060074953, one.Analytic.StandardUncertainty/one.Analytic.Value, 5e-8)
}

// TestLimits: every route of a front keeps each limit (constructed).
func TestLimits(t *testing.T) {
	smallbench.SkipIfSlow(t)
	p := smallbench.On(t, smallbench.Prep, smallbench.Kit)
	wide := smallbench.On(t, strings.Replace(smallbench.Prep, "8 % of target", "30 % of target", 1), smallbench.Kit) // where pipettes do
	free, freeWide := searched(t, p, quick(2)), searched(t, wide, quick(2))
	for name, limit := range map[string]struct {
		set  func(o *Options)
		over func(r *route.Result) bool
	}{
		"left over": {func(o *Options) { o.LeftOver = 20 }, func(r *route.Result) bool { return r.LeftOverML > 20.001 }},
		"volume":    {func(o *Options) { o.Volume = 50 }, func(r *route.Result) bool { return r.LeftOverML > 30.001 }},
		"solute":    {func(o *Options) { o.Solute = 0.3 }, func(r *route.Result) bool { return r.SoluteGrams > 0.301 }},
		"steps":     {func(o *Options) { o.Steps = 1 }, func(r *route.Result) bool { return r.Dilutions > 1 }},
		"strongest": {func(o *Options) { o.Strongest = 0.005 }, func(r *route.Result) bool {
			first := &r.Route.Steps
			return (*first)[0].Verb == route.Weigh && (*first)[0].Amount/(*first)[1].Amount > 0.0052
		}},
		"without": {func(o *Options) { o.Without = []string{"pipette"} }, func(r *route.Result) bool {
			for _, s := range r.Route.Steps {
				if s.Measure != nil && s.Measure.Name == "pipette" {
					return true
				}
			}
			return false
		}},
	} {
		o, broken := quick(2), 0
		p, free := p, free
		if name == "without" {
			p, free = wide, freeWide
		}
		for i := range free.Front {
			if limit.over(&free.Front[i].Result) {
				broken++
			}
		}
		assert.Positive(t, broken, "%s: the limit would cut nothing", name)
		limit.set(&o)
		for _, m := range searched(t, p, o).Front {
			assert.Equal(t, false, limit.over(&m.Result), "%s: %s", name, m.Route.Name)
		}
	}
}

// TestPreferences: the route that is recommended is the least by its preference
// among those that are good enough (constructed).
func TestPreferences(t *testing.T) {
	smallbench.SkipIfSlow(t)
	p := smallbench.On(t, smallbench.Prep, smallbench.Kit)
	for preference, figure := range map[string]func(r *route.Result) float64{
		route.LeastLeftOver: func(r *route.Result) float64 { return r.LeftOverML },
		route.Tightest:      func(r *route.Result) float64 { return r.GiveOrTake() },
		route.Fewest:        func(r *route.Result) float64 { return float64(r.Operations) },
		route.LeastSolute:   func(r *route.Result) float64 { return r.SoluteGrams },
		route.Cheapest:      func(r *route.Result) float64 { return 2*r.SoluteGrams + 0.01*(20+r.LeftOverML) },
	} {
		o := quick(2)
		o.Prefer = preference
		found := searched(t, p, o)
		assert.Equal(t, true, found.Verdict.Meets)
		least := math.Inf(1)
		for i := range found.Front {
			if r := &found.Front[i].Result; r.Chance() >= p.LeastChance {
				least = min(least, figure(r))
			}
		}
		near.Relative(t, preference, least, figure(found.chosen()), 1e-12)
	}
}

// TestSearchTwice: two searches on several processors find the same, in the same
// order.
func TestSearchTwice(t *testing.T) {
	names := func() (all []string) {
		for _, m := range searched(t, smallbench.On(t, smallbench.Prep, smallbench.Kit), quick(2)).Front {
			all = append(all, m.Route.Name+smallbench.Words(m.Route))
		}
		return all
	}
	assert.Equal(t, names(), names())
}

func TestCancelled(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	_, err := Search(ctx, smallbench.On(t, smallbench.Prep, smallbench.Kit), quick(2))
	assert.ErrorIs(t, err, context.Canceled)
}

// TestAbsurd: what no bench can do is answered or refused with its reason.
func TestAbsurd(t *testing.T) {
	for name, c := range map[string]struct{ prep, kit, reason string }{
		"a target stronger than the stock": {`
target = "2 % w/v"
volume = "20 mL"
tolerance = "8 % of target"
[solute]
name = "urea"
[solvent]
name = "water"
[[stock]]
name = "stock"
strength = "1 % w/v"
`, smallbench.Kit[len("\n[[balance]]\nname = \"scale\"\ncapacity = \"100 g\"\nreadability = \"0.01 g\"\nrepeatability = \"0.01 g\"\nlinearity = \"0.02 g\"\n"):], "none comes near to the target"},
		"a volume larger than any vessel": {
			"target = \"0.1 % w/v\"\nvolume = \"2000 mL\"\n[solute]\nname = \"urea\"\n[solvent]\nname = \"water\"\n", smallbench.Kit,
			"2000 mL are wanted, and the largest vessel holds 50 mL"},
		"nothing to start with": {
			"target = \"0.1 % w/v\"\nvolume = \"20 mL\"\n[solute]\nname = \"urea\"\n[solvent]\nname = \"water\"\n",
			"[[cylinder]]\nname = \"cylinder\"\ncapacity = \"50 mL\"\nclass = \"B\"\n", "there is no balance, and the prep names no stock and no packet"},
	} {
		_, err := Search(context.Background(), smallbench.On(t, c.prep, c.kit), quick(2))
		var none *NoRouteError
		require.ErrorAs(t, err, &none, name)
		assert.Equal(t, c.reason, none.Reason.String(), name)
	}
}

// TestNothingMeets: where no route is good enough, the surest is recommended, and
// changes are named with the chance that each gives (constructed: a ten times finer
// scale helps where the scale spoils it).
func TestNothingMeets(t *testing.T) {
	p := smallbench.On(t, smallbench.Prep, smallbench.Kit)
	o := quick(0)
	o.LeftOver = 30
	found := searched(t, p, o)
	assert.Equal(t, false, found.Verdict.Meets)
	kinds := map[string]float64{}
	for _, h := range found.Helps {
		kinds[h.Change.Code] = h.Chance
	}
	assert.Greater(t, kinds["finer-balance"], found.chosen().Inside[0].Normal+0.2)
	assert.NotZero(t, kinds["wider-tolerance"])
	wide := *p
	wide.Tolerances = []route.Tolerance{{Text: "wider"}}
	share := found.chosen().MonteCarlo.Within(p.Target.Value, p.LeastChance) / p.Target.Value
	assert.True(t, slices.ContainsFunc(found.Helps, func(h Help) bool {
		return note.Contains([]note.Note{h.Change}, note.Of("wider-tolerance", "", quantity.Percent(share)))
	}))
	wide.Tolerances[0].Limits = uncertainty.Limits{Lower: p.Target.Value * (1 - share), Upper: p.Target.Value * (1 + share)}
	r, err := wide.Assess(found.chosen().Route, 0.95)
	require.NoError(t, err)
	near.Absolute(t, "inside the wider tolerance", p.LeastChance, r.Inside[0].Normal, 0.02)
}

// TestToleranceOfNothing: the nearest is named where no chance is worth listing.
func TestToleranceOfNothing(t *testing.T) {
	p := smallbench.On(t, smallbench.Prep, smallbench.Kit)
	p.Tolerances[0].Limits = uncertainty.Limits{Lower: p.Target.Value * (1 - 1e-11), Upper: p.Target.Value * (1 + 1e-11)}
	found := searched(t, p, quick(2))
	assert.Equal(t, false, found.Verdict.Meets)
	assert.Len(t, found.Results, 1)
}

// TestSavedRoutes: every route of a front, saved and read again, has the same
// analytic figures.
func TestSavedRoutes(t *testing.T) {
	smallbench.SkipIfSlow(t)
	text := []byte("kit = \"kit\"\n" + smallbench.Prep)
	p := smallbench.On(t, smallbench.Prep, smallbench.Kit)
	found := searched(t, p, quick(2))
	var routes []*route.Route
	for i := range found.Front {
		routes = append(routes, found.Front[i].Route)
	}
	saved, err := read.SaveRoutes(text, "kit", routes)
	require.NoError(t, err)
	again, err := read.ParsePrep("prep", saved, p.Kit)
	require.NoError(t, err)
	require.Len(t, again.Routes, len(routes))
	for i, r := range again.Routes {
		want := &found.Front[i].Result
		got, err := again.Assess(r, 0.95)
		require.NoError(t, err)
		near.Relative(t, r.Name, want.Analytic.Value, got.Analytic.Value, 1e-9)
		near.Relative(t, r.Name, want.Analytic.StandardUncertainty, got.Analytic.StandardUncertainty, 1e-9)
		near.Relative(t, r.Name, want.Analytic.ExpandedUncertainty, got.Analytic.ExpandedUncertainty, 1e-9)
		near.Relative(t, r.Name, want.Inside[0].Normal, got.Inside[0].Normal, 1e-9)
		near.Absolute(t, r.Name, want.LeftOverML, got.LeftOverML, 1e-9)
	}
}
