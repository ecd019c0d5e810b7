package contest_test

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty"
	"minim/uncertainty/bench"
	"minim/uncertainty/contest"
	"minim/uncertainty/route"
)

const demoPrep = "../../cmd/minim/demo/dye.toml"

func load(t testing.TB, path string) *route.Prep {
	t.Helper()
	p, err := bench.LoadPrep(context.Background(), path, "")
	require.NoError(t, err)
	return p
}

func skipIfSlow(t *testing.T) {
	t.Helper()
	if raceDetector {
		t.Skip("run without the race detector")
	}
}

// possibleRoutes calls do for each route that can be done of the demo and the benches.
func possibleRoutes(t testing.TB, do func(bench string, p *route.Prep, r *route.Route, a *uncertainty.Analytic)) {
	t.Helper()
	preps, err := filepath.Glob("../../testdata/benches/*/*.toml")
	require.NoError(t, err)
	for _, path := range append(preps, demoPrep) {
		if filepath.Base(path) == "bench.toml" {
			continue
		}
		p := load(t, path)
		for _, r := range p.Routes {
			if result, err := p.Assess(r, 0.95); err == nil && result.Possible {
				do(filepath.Base(filepath.Dir(path)), p, r, &result.Analytic)
			}
		}
	}
}

// fewTrials are the settings of a page whose sliders move.
var fewTrials = uncertainty.Settings{Trials: 10_000, Seed: 7}

// same holds that an update and a fresh comparison say the same, to the last bit.
func same(t testing.TB, what string, p *route.Prep, changes []uncertainty.Change, updated *route.Comparison) bool {
	t.Helper()
	changed := *p
	changed.Known = changes
	fresh, err := contest.Compare(context.Background(), &changed, "", fewTrials)
	require.NoError(t, err, what)
	ok := assert.Equal(t, fresh.Verdict, updated.Verdict, what) && assert.Equal(t, fresh.Notes, updated.Notes, what)
	for i := range fresh.Results {
		a, b := &fresh.Results[i], &updated.Results[i]
		require.Equal(t, a.MonteCarlo, b.MonteCarlo, "%s, %s", what, a.Route.Name)
		ok = ok && assert.ObjectsAreEqual(nanFree(*a), nanFree(*b))
	}
	return assert.True(t, ok, what)
}

// nanFree has no value that is not equal to itself.
func nanFree(r route.Result) route.Result {
	if r.Closer != r.Closer {
		r.Closer = -1
	}
	return r
}

func update(t testing.TB, l *contest.Live, changes []uncertainty.Change) *route.Comparison {
	t.Helper()
	c, err := l.Update(context.Background(), changes, nil)
	require.NoError(t, err)
	return c
}

// TestLiveAsFresh changes influences of each route of demo and benches one by one, and holds what an update
// gives against a comparison that begins anew. MINIM_LIVE=all changes every one of them.
func TestLiveAsFresh(t *testing.T) {
	skipIfSlow(t)
	every, n := 29, 0
	if os.Getenv("MINIM_LIVE") == "all" {
		every = 1
	}
	possibleRoutes(t, func(bench string, p *route.Prep, r *route.Route, a *uncertainty.Analytic) {
		one := *p
		one.Routes = []*route.Route{r}
		l, err := contest.NewLive(&one, fewTrials)
		require.NoError(t, err)
		for i := range a.Budget {
			line := &a.Budget[i]
			if n++; n%every != 0 {
				continue
			}
			changes := []uncertainty.Change{{Only: line.Identity(), Factor: 1.5}}
			same(t, bench+", "+r.Name+", "+string(line.Code), &one, changes, update(t, l, changes))
		}
		if n%5 == 0 {
			same(t, bench+", "+r.Name+", as it is", &one, nil, update(t, l, nil))
		}
	})
	t.Logf("%d influences, one in %d was changed", n, every)
}

// changesOfDemo are of all kinds: of an instrument that routes share, of the day, of a material.
func changesOfDemo(t testing.TB, p *route.Prep) (list [][]uncertainty.Change) {
	t.Helper()
	seen := make(map[uncertainty.Code]bool)
	for _, r := range p.Routes {
		result, err := p.Assess(r, 0.95)
		require.NoError(t, err)
		for i := range result.Analytic.Budget {
			if line := &result.Analytic.Budget[i]; !seen[line.Code] {
				seen[line.Code] = true
				list = append(list, []uncertainty.Change{{Code: line.Code, Group: line.Group, Factor: 2}})
			}
		}
	}
	return list
}

// TestLiveOfAllRoutes: what routes share changes in all of them, with the chances of coming closer, one change after
// another, and back; and what was given before stays as it was.
func TestLiveOfAllRoutes(t *testing.T) {
	skipIfSlow(t)
	p := load(t, demoPrep)
	l, err := contest.NewLive(p, fewTrials)
	require.NoError(t, err)
	before := update(t, l, nil)
	for _, changes := range changesOfDemo(t, p) {
		same(t, string(changes[0].Code), p, changes, update(t, l, changes))
	}
	all := changesOfDemo(t, p)
	same(t, "two at once", p, append(all[0], all[1]...), update(t, l, append(all[0], all[1]...)))
	same(t, "before", p, nil, before)
	same(t, "back", p, nil, update(t, l, nil))
}

// TestLiveFirst: before anything is simulated there is a comparison by the laws, which says so, and whose
// figures are near those that are simulated.
func TestLiveFirst(t *testing.T) {
	p := load(t, demoPrep)
	l, err := contest.NewLive(p, fewTrials)
	require.NoError(t, err)
	var first *route.Comparison
	c, err := l.Update(context.Background(), nil, func(c *route.Comparison) { first = c })
	require.NoError(t, err)
	require.NotNil(t, first)
	for i := range c.Results {
		a, b := &first.Results[i], &c.Results[i]
		require.Equal(t, a.Possible, b.Possible)
		if !a.Possible {
			assert.Equal(t, a.Reason, b.Reason)
			continue
		}
		assert.True(t, a.MonteCarlo.ByLaw && !b.MonteCarlo.ByLaw)
		assert.Equal(t, 0, a.MonteCarlo.Trials)
		assert.Equal(t, a.Analytic, b.Analytic)
		u := b.Analytic.StandardUncertainty
		// What bends in the model is not in its law: within a tenth of u where the model is nearly linear.
		if u < 0.1*b.Analytic.Value {
			assert.InDelta(t, b.MonteCarlo.Lower, a.MonteCarlo.Lower, 0.1*u, b.Route.Name)
			assert.InDelta(t, b.MonteCarlo.Upper, a.MonteCarlo.Upper, 0.1*u, b.Route.Name)
			assert.InDelta(t, b.MonteCarlo.StandardDeviation, a.MonteCarlo.StandardDeviation, 0.01*u, b.Route.Name)
			assert.InDelta(t, b.Inside[0].Simulated, a.Inside[0].Simulated, 0.01, b.Route.Name)
			assert.Equal(t, b.Informative, a.Informative)
		}
	}
	assert.Equal(t, c.Verdict, first.Verdict)
}

// TestLiveMistakes: nothing that has the code, and a distribution that would need another model; afterwards all
// is as before.
func TestLiveMistakes(t *testing.T) {
	p := load(t, demoPrep)
	l, err := contest.NewLive(p, fewTrials)
	require.NoError(t, err)
	var unknown *contest.UnknownChangeError
	_, err = l.Update(context.Background(), []uncertainty.Change{{Code: "no such", Factor: 2}}, nil)
	require.ErrorAs(t, err, &unknown)
	var other *uncertainty.StructureError
	changes := changesOfDemo(t, p)[0]
	changes[0].Factor = -1
	_, err = l.Update(context.Background(), changes, nil)
	require.ErrorAs(t, err, &other)
	same(t, "afterwards", p, nil, update(t, l, nil))
}

// TestLiveStopped: wherever an update is stopped, it returns the error of the context, soon, and the next one is
// right.
func TestLiveStopped(t *testing.T) {
	p := load(t, demoPrep)
	l, err := contest.NewLive(p, fewTrials)
	require.NoError(t, err)
	changes := changesOfDemo(t, p)[0]
	stopped := 0
	for after := time.Duration(0); after < 200*time.Millisecond; after += 11 * time.Millisecond {
		ctx, cancel := context.WithTimeout(context.Background(), after)
		_, err := l.Update(ctx, changes, nil)
		cancel()
		if err == nil {
			break
		}
		require.True(t, errors.Is(err, context.DeadlineExceeded), err)
		stopped++
	}
	assert.Positive(t, stopped)
	same(t, "afterwards", p, changes, update(t, l, changes))
}

// TestRestate: another mark, of the same structure, and fewer routes, of another; what is wrong is
// not taken.
func TestRestate(t *testing.T) {
	p := load(t, demoPrep)
	l, err := contest.NewLive(p, fewTrials)
	require.NoError(t, err)
	other := load(t, demoPrep)
	for _, r := range other.Routes {
		if last := &r.Steps[len(r.Steps)-1]; last.Verb == route.MakeUpTo && last.Measure.Finest() > 0 {
			last.Amount -= last.Measure.Finest()
		}
	}
	require.NoError(t, l.Restate(other))
	same(t, "other marks", other, nil, update(t, l, nil))
	fewer := *other
	fewer.Routes = other.Routes[2:4]
	require.NoError(t, l.Restate(&fewer))
	same(t, "fewer routes", &fewer, nil, update(t, l, nil))
	none := *other
	none.Routes = nil
	require.Error(t, l.Restate(&none))
	same(t, "as it was", &fewer, nil, update(t, l, nil))
}
