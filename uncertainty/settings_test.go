package uncertainty

import (
	"context"
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// TestCheck: JCGM 101, 7.9.4: M = max(10⁴, 100/(1-p)), a ceiling that doubles
// must not carry up by one.
func TestCheck(t *testing.T) {
	for _, c := range []struct {
		settings Settings
		message  string
	}{
		{Settings{}, ""},
		{Settings{Trials: 10_000}, ""},
		{Settings{Trials: 9_999}, "a coverage probability of 0.95 needs at least 10000 trials, found 9999"},
		{Settings{Trials: -1}, "a coverage probability of 0.95 needs at least 10000 trials, found -1"},
		{Settings{Trials: 10_000, Coverage: 0.99}, ""},
		{Settings{Trials: 19_999, Coverage: 0.995}, "a coverage probability of 0.995 needs at least 20000 trials, found 19999"},
		{Settings{Trials: 20_000, Coverage: 0.995}, ""},
		{Settings{Trials: 99_999, Coverage: 0.999}, "a coverage probability of 0.999 needs at least 100000 trials, found 99999"},
		{Settings{Trials: 100_000, Coverage: 0.999}, ""},
		{Settings{Coverage: 0.9999}, ""},
		{Settings{Trials: 999_999, Coverage: 0.9999}, "a coverage probability of 0.9999 needs at least 1000000 trials, found 999999"},
		{Settings{Trials: 10_000, Coverage: 0.9973}, "a coverage probability of 0.9973 needs at least 37038 trials, found 10000"},
		{Settings{Trials: 1_000_000_000}, ""},
		{Settings{Trials: 1_000_000_001}, "at most 1000000000 trials can be run, found 1000000001"},
		{Settings{Coverage: 1}, "the coverage probability must lie between 0 and 1, found 1"},
		{Settings{Coverage: 95}, "the coverage probability must lie between 0 and 1, found 95"},
		{Settings{Coverage: -0.1}, "the coverage probability must lie between 0 and 1, found -0.1"},
		{Settings{Coverage: math.NaN()}, "the coverage probability must lie between 0 and 1, found NaN"},
	} {
		if c.message == "" {
			assert.Equal(t, nil, c.settings.Check(), "%+v", c.settings)
			continue
		}
		assert.Equal(t, c.message, fmt.Sprint(c.settings.Check()))
		m := new(Model)
		_, err := m.Simulate(context.Background(), m.Constant(1), c.settings)
		assert.Equal(t, c.message, fmt.Sprint(err))
	}
}

func TestQuantileOfTrials(t *testing.T) {
	mc := MonteCarlo{Trials: 10, tally: ranked(t, []float64{1, 1, 2, 2, 2, 3, 4, 5, 8, 9})}
	for _, c := range []struct{ p, want float64 }{{0, 1}, {0.1, 1}, {0.2, 2}, {0.5, 3}, {0.79, 5}, {0.8, 8}, {1, 9}} {
		assert.Equal(t, c.want, mc.Quantile(c.p), "quantile %v", c.p)
	}
}
