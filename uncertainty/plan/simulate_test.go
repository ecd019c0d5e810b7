package plan

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty"
	"minim/uncertainty/route"
	"minim/uncertainty/smallbench"
)

// What is shown of a search has the figures that a comparison gives with the settings
// asked for; the rest of the front is simulated with fewer trials, and says so.
func TestWhatIsShownIsSimulatedInFull(t *testing.T) {
	smallbench.SkipIfSlow(t)
	p := smallbench.On(t, smallbench.Prep, smallbench.Kit+smallbench.Candidates)
	o := quick(1)
	o.Settings.Trials = 2 * searchTrials
	found := searched(t, p, o)
	routes := make([]*route.Route, len(found.Results))
	for i := range found.Results {
		routes[i] = found.Results[i].Route
	}
	again, err := route.Evaluate(context.Background(), p, routes, o.Settings)
	require.NoError(t, err)
	for i := range found.Results {
		shown, want := &found.Results[i], &again.Results[i]
		assert.Equal(t, want.Inside, shown.Inside, shown.Route.Name)
		assert.Equal(t, want.MonteCarlo, shown.MonteCarlo, shown.Route.Name)
		assert.Equal(t, want.Quoted, shown.Quoted, shown.Route.Name)
		assert.Equal(t, want.HoldsWithin, shown.HoldsWithin, shown.Route.Name)
		assert.Equal(t, 2*searchTrials, shown.MonteCarlo.Trials)
	}
	leaders, fewer := 0, 0
	for i := range found.Front {
		switch found.Front[i].MonteCarlo.Trials {
		case 2 * searchTrials:
			leaders++
		case searchTrials:
			fewer++
		}
	}
	assert.GreaterOrEqual(t, leaders, len(found.Results), "others would have been chosen until they were simulated")
	assert.Equal(t, len(found.Front), leaders+fewer)
	assert.Positive(t, fewer)
	assert.Equal(t, o.Settings.Trials, found.Settings.Trials)
	assert.Equal(t, found.Verdict.Meets, found.Prep.Meets(found.chosen()))
}

// A coverage probability that needs more trials than a search does of its own gets what it
// needs.
func TestFewerTrials(t *testing.T) {
	for _, c := range []struct {
		trials   int
		coverage float64
		want     int
	}{
		{1_000_000, 0.95, searchTrials}, {20_000, 0.95, 20_000}, {0, 0.95, searchTrials}, {1_000_000, 0.9999, 1_000_000},
	} {
		s := Fewer(uncertainty.Settings{Trials: c.trials, Coverage: c.coverage})
		assert.Equal(t, c.want, s.Trials)
		require.NoError(t, s.Check())
	}
}
