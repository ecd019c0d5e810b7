package statistics

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"runtime"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// samples are n values of shapes that could be awkward to group into buckets
// laid over the first thousand of them.
func samples(n int) map[string][]float64 {
	random := rand.New(rand.NewPCG(5, uint64(n)))
	fill := func(f func(i int) float64) []float64 {
		values := make([]float64, n)
		for i := range values {
			values[i] = f(i)
		}
		return values
	}
	normal := func(int) float64 { return random.NormFloat64() }
	sorted := fill(normal)
	slices.Sort(sorted)
	reversed := slices.Clone(sorted)
	slices.Reverse(reversed)
	return map[string][]float64{
		"normal":             fill(normal),
		"sorted":             sorted,
		"reversed":           reversed,
		"Cauchy":             fill(func(int) float64 { return random.NormFloat64() / random.NormFloat64() }),
		"over all exponents": fill(func(int) float64 { return math.Ldexp(random.Float64()-0.5, random.IntN(2000)-1000) }),
		"ties":               fill(func(int) float64 { return float64(random.IntN(7)) }),
		"a constant":         fill(func(int) float64 { return 5 }),
		"zeros of both signs": fill(func(i int) float64 {
			return math.Copysign(0, float64(i%2)-0.5)
		}),
		"an atom":              fill(func(int) float64 { return max(0, random.NormFloat64()) }),
		"first alike":          fill(func(i int) float64 { return float64(i/2000) * random.Float64() }),
		"first close together": fill(func(i int) float64 { return random.NormFloat64() * math.Exp(float64(i/2000)) }),
		"as far as numbers go": fill(func(int) float64 { return (2*random.Float64() - 1) * math.MaxFloat64 }),
		"as small":             fill(func(int) float64 { return float64(random.IntN(100)) * math.SmallestNonzeroFloat64 }),
		"a digit apart":        fill(func(int) float64 { return 1 + float64(random.IntN(3))*0x1p-52 }),
	}
}

// TestRanking holds every answer against a full sort, on one processor and
// several.
func TestRanking(t *testing.T) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(0))
	for _, n := range []int{1, 2, 255, 512, 1025, 20_001} {
		for name, values := range samples(n) {
			for _, processors := range []int{1, 3} {
				runtime.GOMAXPROCS(processors)
				what := fmt.Sprintf("%s, %d values, %d processors", name, n, processors)
				before := slices.Clone(values)
				sorted := slices.Sorted(slices.Values(values))
				r := ranked(t, values)
				checkRanks(t, what, sorted, r)
				for _, q := range []int{0, n / 3, n * 95 / 100, n - 1} {
					if q < n {
						low, high := shortestOf(sorted, q)
						gotLow, gotHigh, err := r.Shortest(t.Context(), q)
						require.NoError(t, err)
						require.Equal(t, []float64{low, high}, []float64{gotLow, gotHigh}, "%s, shortest over %d", what, q)
					}
				}
				checkRanks(t, what+", asked again", sorted, r)
				require.Equal(t, before, values, "%s: the values stay in their places", what)
			}
		}
	}
}

func checkRanks(t *testing.T, what string, sorted []float64, r Tally) {
	t.Helper()
	n := len(sorted)
	require.Equal(t, n, r.Size(), what)
	for k := 0; k < n; k += 1 + n/23 {
		require.Equal(t, sorted[k], r.At(k), "%s, rank %d", what, k)
		for _, x := range []float64{sorted[k], math.Nextafter(sorted[k], math.Inf(1)), math.Nextafter(sorted[k], math.Inf(-1))} {
			less, _ := slices.BinarySearch(sorted, x)
			notMore, _ := slices.BinarySearch(sorted, math.Nextafter(x, math.Inf(1)))
			require.Equal(t, float64(less), r.Below(x, false), "%s, less than %v", what, x)
			require.Equal(t, float64(notMore), r.Below(x, true), "%s, at most %v", what, x)
		}
	}
	for _, orEqual := range []bool{false, true} {
		assert.Equal(t, 0.0, r.Below(math.Inf(-1), orEqual), what)
		assert.Equal(t, float64(n), r.Below(math.Inf(1), orEqual), what)
	}
}

// shortestOf is the first shortest interval over q steps of sorted values.
func shortestOf(sorted []float64, q int) (low, high float64) {
	best := 0
	for i := range len(sorted) - q {
		if sorted[i+q]-sorted[i] < sorted[best+q]-sorted[best] {
			best = i
		}
	}
	return sorted[best], sorted[best+q]
}

// ranked is the tally of all values.
func ranked(t *testing.T, values []float64) *Ranking {
	t.Helper()
	r, err := NewRanking(t.Context(), values)
	require.NoError(t, err)
	return r
}

// Ranks are the same whether all values were sorted before or the bucket of each is, and however
// many are asked for.
func TestPrepared(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	values := make([]float64, 3000)
	for i := range values {
		values[i] = r.NormFloat64()
	}
	sorted := slices.Sorted(slices.Values(values))
	for _, ranks := range []int{0, 5, 12, 3000} {
		all, err := NewRanking(t.Context(), values)
		require.NoError(t, err)
		require.NoError(t, all.Prepare(t.Context(), ranks))
		for k, v := range sorted {
			require.Equal(t, v, all.At(k))
		}
		assert.Equal(t, 1500.0, all.Below(sorted[1500], false))
		low, high, err := all.Shortest(t.Context(), 2850)
		require.NoError(t, err)
		assert.Less(t, low, high)
	}
	all, err := NewRanking(t.Context(), values)
	require.NoError(t, err)
	stopped, stop := context.WithCancel(t.Context())
	stop()
	require.ErrorIs(t, all.Prepare(stopped, 3000), context.Canceled)
}
