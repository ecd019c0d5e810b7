package purchase

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty/plan"
	"minim/uncertainty/search"
	"minim/uncertainty/smallbench"
)

// The coarsest balance that would do is one on which the simulated chance of the best route is
// enough, where few readings stand beside other errors; the next coarser one has none. The
// chance to first order, by effective degrees of freedom, is enough on coarser ones (constructed).
func TestCoarsestOfFewReadings(t *testing.T) {
	smallbench.SkipIfSlow(t)
	p := smallbench.On(t, smallbench.Prep, smallbench.TwoReadings+smallbench.Cylinder)
	o := quick(0)
	o.LeftOver, o.Settings.Trials = 400, 100_000
	b, err := Buy(context.Background(), p, o)
	require.NoError(t, err)
	require.Len(t, b.BreakEven, 1)
	d := b.BreakEven[0].Readability
	require.Positive(t, d)
	chance := func(d float64) float64 {
		q := *p
		q.Kit = search.WithBalances(p.Kit, p.Kit.Balances[0].WithReadability(d))
		r, _, err := plan.Best(context.Background(), &q, o)
		require.NoError(t, err)
		return r.Chance()
	}
	assert.GreaterOrEqual(t, chance(d), p.LeastChance, "%v g", d)
	for i, x := range series(-6, 1) {
		if x == d {
			next := series(-6, 1)[i+1]
			assert.Less(t, chance(next), p.LeastChance, "%v g", next)
		}
	}
}
