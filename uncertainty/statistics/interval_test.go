package statistics

import (
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
		low, high := SymmetricInterval(ranked(t, upTo(c.trials)), c.coverage)
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
		low, high, _ := ranked(t, c.values).Shortest(t.Context(), spanOf(len(c.values), c.coverage))
		assert.Equal(t, []float64{c.low, c.high}, []float64{low, high}, "%v", c.values)
	}
}
