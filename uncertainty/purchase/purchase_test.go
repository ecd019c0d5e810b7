package purchase

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty"
	"minim/uncertainty/near"
	"minim/uncertainty/plan"
	"minim/uncertainty/route"
	"minim/uncertainty/search"
	"minim/uncertainty/smallbench"
	"minim/uncertainty/tolerances"
)

// quick options for up to so many dilutions.
func quick(steps int) plan.Options {
	return plan.Options{Limits: route.Limits{Steps: steps}, Settings: uncertainty.Settings{Trials: 10_000, Seed: 1}}
}

// TestBuy: with direct routes only, the scale is not good enough; the cheapest
// candidate that makes it so is named, and the break-even lies between a balance
// that does and one that does not (constructed).
func TestBuy(t *testing.T) {
	p := smallbench.On(t, smallbench.Prep, smallbench.Kit+smallbench.Candidates)
	o := quick(1)
	o.Steps, o.LeftOver = 0, 30
	b, err := Buy(context.Background(), p, o)
	require.NoError(t, err)
	require.Len(t, b.Choices, 3)
	assert.Equal(t, Verdict{Present: 0, Buy: 1, Meets: false, Would: true}, b.Verdict)
	require.Len(t, b.BreakEven, 1)
	d := b.BreakEven[0].Readability
	meets := func(d float64) bool {
		q := *p
		q.Kit = search.WithBalances(p.Kit, p.Kit.Balances[0].WithReadability(d))
		r, _, err := plan.Best(context.Background(), &q, o)
		require.NoError(t, err)
		return r != nil && r.Chance() >= p.LeastChance
	}
	assert.Equal(t, true, meets(d), "at the break-even of %v g", d)
	next := series(-6, 1)
	for i, x := range next {
		if x == d {
			assert.Equal(t, false, meets(next[i+1]), "a step coarser than %v g", d)
		}
	}
	require.Len(t, b.Curves, 1)
	for i := range b.Curves[0].Relative[1:] {
		assert.Less(t, b.Curves[0].Relative[i], b.Curves[0].Relative[i+1]*1.001, "a coarser balance is no better")
	}
	least, can := b.Like.Least(tolerances.HalfWidth(p))
	require.Equal(t, true, can)
	near.Relative(t, "volume weighed directly", least*0.99/0.001, b.DirectML, 1e-12)
}

// TestDoubt: a verdict that rests on an assumed scale is made again with it twice
// and half as wide (constructed).
func TestDoubt(t *testing.T) {
	p := smallbench.On(t, smallbench.Prep, `
[[balance]]
name = "scale"
capacity = "100 g"
readability = "0.001 g"
[[cylinder]]
name = "cylinder"
capacity = "50 mL"
class = "B"
clinging = "0.05 mL"
`)
	o := quick(1)
	o.Steps, o.LeftOver = 0, 30
	b, err := Buy(context.Background(), p, o)
	require.NoError(t, err)
	assert.Greater(t, b.AssumedShare, 0.5)
	require.NotNil(t, b.Doubled)
	assert.Equal(t, false, b.Doubled.Meets)
	assert.Equal(t, true, b.Halved.Meets)
}

// TestBuyWithoutTolerance: the tightest route decides.
func TestBuyWithoutTolerance(t *testing.T) {
	p := smallbench.On(t, smallbench.Prep, smallbench.Kit+smallbench.Candidates)
	p.Tolerances = nil
	o := quick(1)
	if !smallbench.Thorough {
		o.Steps = 0
	}
	b, err := Buy(context.Background(), p, o)
	require.NoError(t, err)
	assert.Empty(t, b.BreakEven)
	assert.Zero(t, b.DirectML)
	assert.Equal(t, 0, b.Verdict.Present)
}
