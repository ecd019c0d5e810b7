package uncertainty

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A normal quantity has the interval of first order exactly, so that whatever few trials differ by is
// their noise: no cause may be named, and the exact interval is quoted. A rectangle, whose ends are
// far from that, has a cause however few the trials are (constructed).
func TestNoiseIsNoCause(t *testing.T) {
	check := func(d Distribution, seed uint64, coverage float64) (CrossCheck, Quoted) {
		m := new(Model)
		out := m.Influence(Influence{Code: "x", Distribution: d})
		a, err := m.Propagate(out, coverage)
		require.NoError(t, err)
		mc, err := m.Simulate(context.Background(), out, Settings{Trials: 10_000, Seed: seed, Coverage: coverage})
		require.NoError(t, err)
		c, err := m.CrossCheck(context.Background(), out, a, &mc)
		require.NoError(t, err)
		return c, Quote(a, &mc, c)
	}
	noisy := 0
	for seed := range uint64(60) {
		c, q := check(Normal{100, 9.4}, seed, 0.99)
		assert.Contains(t, []Cause{noCause, noise}, c.Cause, "%v: %+v", seed, c)
		assert.False(t, q.Simulated)
		if c.IsNoise() {
			noisy++
			assert.Nil(t, c.Influence)
		}
	}
	assert.Positive(t, noisy)
	c, q := check(PlusMinus(10), 1, 0.95)
	assert.Equal(t, shaped, c.Cause)
	assert.True(t, q.Simulated)
}
