package search

import (
	"context"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty/route"
	"minim/uncertainty/smallbench"
)

// Searches that share a count try together no more than they may, each no more than its part of what is left, or than each may
// (constructed): the third of them has a quarter of what the first had.
func TestSearchesShareTheirWork(t *testing.T) {
	o := Options{Work: 1000, Parts: 2, Tried: new(int64)}
	assert.EqualValues(t, 500, o.room())
	*o.Tried = 900
	assert.EqualValues(t, 50, o.room())
	o.Each = 20
	assert.EqualValues(t, 20, o.room())
	*o.Tried = 1001
	assert.EqualValues(t, 0, o.room())
	assert.EqualValues(t, 20, (&Options{Each: 20, Tried: new(int64)}).room())
	smallbench.SkipIfSlow(t)
	p := smallbench.On(t, smallbench.Prep, smallbench.Kit)
	for _, parts := range []int64{1, 2, 4} {
		limited := Options{Limits: route.Limits{Steps: 2}, Work: 12_000, Parts: parts, Tried: new(int64)}
		before := int64(0)
		for range 4 {
			room := limited.room()
			b, err := NewBench(p, limited)
			require.NoError(t, err)
			_, err = b.Surest(context.Background(), 0)
			require.NoError(t, err)
			tried := *limited.Tried - before
			assert.Less(t, tried, room+assessing)
			assert.Greater(t, tried, int64(0), "of all that is left it has a part")
			before = *limited.Tried
			if parts == 1 {
				break
			}
		}
		assert.Less(t, *limited.Tried, limited.Work+assessing)
	}
}

// The surest route is the same whatever chance is asked for that it has, and none where it has less (constructed).
func TestSurestAboveAChance(t *testing.T) {
	p := smallbench.On(t, strings.Replace(smallbench.Prep, "8 % of target", "2 % of target", 1), smallbench.Kit)
	surest := func(atLeast float64) *route.Result {
		b, err := NewBench(p, quick(1))
		require.NoError(t, err)
		r, err := b.Surest(context.Background(), atLeast)
		require.NoError(t, err)
		return r
	}
	any := surest(0)
	require.NotNil(t, any)
	chance := any.Inside[0].Normal
	require.True(t, chance > 0.1 && chance < enough, "%v", chance)
	for _, below := range []float64{0.5 * chance, 0.99 * chance, chance - 1e-6} {
		r := surest(below)
		require.NotNil(t, r, "%v of %v", below, chance)
		assert.Equal(t, smallbench.Words(any.Route), smallbench.Words(r.Route))
	}
	assert.Nil(t, surest(chance+1e-4))
}
