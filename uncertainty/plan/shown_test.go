package plan

import (
	"context"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty"
	read "minim/uncertainty/bench"
	"minim/uncertainty/route"
	"minim/uncertainty/search"
	"minim/uncertainty/smallbench"
)

// On every bench the same is chosen, with the same figures, whether all routes that were found are simulated
// beforehand, those that were not afterwards, or none of these; where a tolerance is asked for, some are not.
func TestChoiceIsTheSameWhateverIsSimulated(t *testing.T) {
	left := 0
	policies, benches := []string{route.Usual, route.LeastLeftOver, route.Tightest}, benchesOf(t)
	if !smallbench.Thorough { // searches whole benches
		policies, benches = policies[:1], benches[:1]
	}
	for i, path := range benches {
		t.Run(filepath.Base(filepath.Dir(path)), func(t *testing.T) {
			p, err := read.LoadPrep(context.Background(), path, "")
			require.NoError(t, err)
			o := Options{Limits: p.Limits, Work: 20_000_000, Settings: uncertainty.Settings{Seed: 1}}
			b, err := search.NewBench(p, o.Search())
			require.NoError(t, err)
			list, err := b.Find(context.Background())
			require.NoError(t, err)
			for _, prefer := range policies[:max(1, len(policies)-2*i)] {
				o.Prefer, o.Shown = prefer, false
				before, whole, shown := simulatedBefore(t, p, list, o), planned(t, p, list, o), (*Plan)(nil)
				o.Shown = true
				shown = planned(t, p, list, o)
				for _, other := range []*Plan{whole, shown} {
					assert.Equal(t, before.Verdict, other.Verdict, prefer)
					require.Len(t, other.Results, len(before.Results), prefer)
					for at := range other.Results {
						want, got := &before.Results[at], &other.Results[at]
						assert.Equal(t, want.Route.Steps, got.Route.Steps, prefer)
						assert.Equal(t, want.Inside, got.Inside, prefer)
						assert.Equal(t, want.MonteCarlo, got.MonteCarlo, prefer)
					}
				}
				left += len(whole.Front) - len(shown.Front)
			}
		})
	}
	assert.Positive(t, left, "so many were not simulated")
}

// planned is the choice among routes that were found.
func planned(t *testing.T, p *route.Prep, list []route.Result, o Options) *Plan {
	t.Helper()
	found := &Plan{Options: o}
	require.NoError(t, found.simulate(context.Background(), p, list))
	return found
}

// simulatedBefore is that where all that were found were simulated beforehand.
func simulatedBefore(t *testing.T, p *route.Prep, list []route.Result, o Options) *Plan {
	t.Helper()
	l, err := poolOf(p, list, o)
	require.NoError(t, err)
	require.NoError(t, l.simulateFound(context.Background()))
	require.NoError(t, l.tune())
	found := &Plan{Options: o}
	require.NoError(t, found.chosenOf(context.Background(), l))
	return found
}
