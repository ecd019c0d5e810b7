package statistics

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty/near"
)

// binned counts values in bins that are laid over the first part of them.
func binned(t *testing.T, values []float64, u float64) *Bins {
	b, err := NewBins(t.Context(), values[:max(1, len(values)/4)], 0.95, u)
	require.NoError(t, err)
	b.Count(values[:len(values)/2])
	b.Count(values[len(values)/2:])
	b.Finish()
	return b
}

// binnable are samples of a spread that is the same from the first to the last.
func binnable(n int) map[string][]float64 {
	all := samples(n)
	for name := range all {
		switch name {
		case "sorted", "reversed", "first alike", "first close together", "as far as numbers go", "over all exponents":
			delete(all, name)
		}
	}
	return all
}

// TestBins holds every answer against a full sort: values are off by less than
// the width of a bin, and counts belong to values that are no further off. Only
// the two outermost bins are wider; the ends of an interval never lie there.
func TestBins(t *testing.T) {
	for _, n := range []int{1000, 12_000} {
		for name, values := range binnable(n) {
			what := fmt.Sprintf("%s, %d values", name, n)
			sorted := slices.Sorted(slices.Values(values))
			low, high := SymmetricRanks(n, 0.95)
			b := binned(t, values, (sorted[high]-sorted[low])/4)
			require.Equal(t, n, b.Size(), what)
			require.LessOrEqual(t, len(b.through), mostBins, what)
			assert.Equal(t, true, b.Width > 0 && b.Width <= max((sorted[high]-sorted[low])/1e4, 1e-12*math.Abs(sorted[low]), 1e-300), "%s: width %v", what, b.Width)
			first, last := b.low+b.Width, b.low+float64(len(b.through)-1)*b.Width
			for k := 0; k < n; k += 1 + n/500 {
				if v := sorted[k]; first < v && v < last {
					near.Absolute(t, what+", rank", v, b.At(k), b.Width*(1+1e-6))
				}
			}
			assert.Equal(t, true, first < sorted[low] && sorted[high] < last, "%s: the interval lies inside", what)
			assert.Equal(t, true, sorted[0] <= b.At(0) && b.At(n-1) <= sorted[n-1], what)
			checkBinnedCounts(t, what, sorted, b)
			checkBinnedShortest(t, what, sorted, b)
		}
	}
}

// slack is the width of a bin, or of a digit of x where that is wider.
func (b *Bins) slack(x float64) float64 { return 1.001*b.Width + 0x1p-52*math.Abs(x) }

func checkBinnedCounts(t *testing.T, what string, sorted []float64, b *Bins) {
	t.Helper()
	count := func(x float64) float64 {
		n, _ := slices.BinarySearch(sorted, x)
		return float64(n)
	}
	last := 0.0
	for k := 0; k < len(sorted); k += 1 + len(sorted)/200 {
		x := sorted[k] + 0.3*b.Width
		below := b.Below(x, false)
		assert.Equal(t, true, last <= below, "%s: counts rise", what)
		last = below
		if x > b.low+b.Width && x < b.low+float64(len(b.through)-1)*b.Width {
			// At most as many as before the next bin, at least those before this.
			assert.Equal(t, true, count(x-b.slack(x)) <= below && below <= count(x+b.slack(x)), "%s: %v below %v", what, below, x)
		}
	}
	n := float64(len(sorted))
	least, most := sorted[0], sorted[len(sorted)-1]
	assert.Equal(t, []float64{0, 0, 0, n, n, n}, []float64{
		b.Below(math.Inf(-1), true), b.Below(math.Nextafter(least, math.Inf(-1)), true), b.Below(least, false),
		b.Below(most, true), b.Below(math.Nextafter(most, math.Inf(1)), false), b.Below(math.Inf(1), false),
	}, what)
}

// checkBinnedShortest: no shorter than the shortest by two bins, nor longer, and
// spanning as many.
func checkBinnedShortest(t *testing.T, what string, sorted []float64, b *Bins) {
	t.Helper()
	q := spanOf(len(sorted), 0.95)
	low, high := shortestOf(sorted, q)
	gotLow, gotHigh, err := b.Shortest(t.Context(), q)
	require.NoError(t, err)
	near.Absolute(t, what+", shortest", high-low, gotHigh-gotLow, 3*b.Width)
	from, _ := slices.BinarySearch(sorted, gotLow-b.slack(gotLow))
	to, _ := slices.BinarySearch(sorted, gotHigh+b.slack(gotHigh))
	assert.Equal(t, true, to-from >= q, "%s: the shortest interval holds %d, not %d", what, to-from, q)
}
