package uncertainty

import (
	"context"
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

func upTo(n int) []float64 {
	values := make([]float64, n)
	for i := range values {
		values[i] = float64(i + 1)
	}
	return values
}

// TestSymmetricInterval works the indices of JCGM 101, 7.7.2 by hand; the value
// of an order statistic is its index. The two large M are those of 7.9.4,
// note 7: q = 95 000, r = 2500, and ten times as much.
func TestSymmetricInterval(t *testing.T) {
	for _, c := range []struct {
		trials    int
		coverage  float64
		low, high float64
	}{
		{20, 0.9, 1, 19},  // q = 18, r = 1
		{20, 0.8, 2, 18},  // q = 16, r = 2
		{20, 0.95, 1, 20}, // q = 19, M - q = 1: r = ⌊2/2⌋
		{10, 0.7, 2, 9},   // q = 7, M - q = 3: r = ⌊4/2⌋
		{21, 0.95, 1, 21}, // pM = 19.95, q = ⌊20.45⌋
		{10, 0.75, 1, 9},  // pM = 7.5, q = 8, r = 1
		{11, 0.7, 2, 10},  // pM = 7.7, q = 8, M - q = 3: r = 2
		{11, 0.4, 4, 8},   // pM = 4.4, q = 4, M - q = 7: r = 4
		{4, 0.99, 1, 4},   // q = 4 would need five values
		{100_000, 0.95, 2500, 97_500},
		{1_000_000, 0.95, 25_000, 975_000},
		{1_000_000, 0.99, 5000, 995_000},
	} {
		low, high := symmetricInterval(newRanking(upTo(c.trials)), c.coverage)
		assert.Equal(t, []float64{c.low, c.high}, []float64{low, high}, "M %d, p %v", c.trials, c.coverage)
	}
}

// TestShortestInterval: constructed, by hand.
func TestShortestInterval(t *testing.T) {
	for _, c := range []struct {
		values    []float64
		coverage  float64
		low, high float64
	}{
		{[]float64{0, 5, 6, 7, 8, 20}, 0.5, 5, 8},      // q = 3: spans 7, 3, 14
		{[]float64{0, 1, 2, 3, 9, 20}, 0.5, 0, 3},      // at the lower end
		{[]float64{0, 9, 17, 18, 19, 20}, 0.5, 17, 20}, // at the upper end
		{[]float64{0, 2, 4, 6, 8, 10}, 0.5, 0, 6},      // all alike: the first
		{[]float64{-5, -1, 0, 3}, 0.99, -5, 3},
	} {
		low, high := newRanking(c.values).shortest(spanOf(len(c.values), c.coverage))
		assert.Equal(t, []float64{c.low, c.high}, []float64{low, high}, "%v", c.values)
	}
}

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
	mc := MonteCarlo{Trials: 10, tally: newRanking([]float64{1, 1, 2, 2, 2, 3, 4, 5, 8, 9})}
	for _, c := range []struct{ p, want float64 }{{0, 1}, {0.1, 1}, {0.2, 2}, {0.5, 3}, {0.79, 5}, {0.8, 8}, {1, 9}} {
		assert.Equal(t, c.want, mc.Quantile(c.p), "quantile %v", c.p)
	}
}
