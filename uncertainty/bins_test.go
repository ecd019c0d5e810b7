package uncertainty

import (
	"context"
	"fmt"
	"math"
	"runtime"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty/near"
)

// binned counts values in bins that are laid over the first part of them.
func binned(values []float64, u float64) *bins {
	b := newBins(values[:max(1, len(values)/4)], 0.95, u)
	b.count(values[:len(values)/2])
	b.count(values[len(values)/2:])
	b.finish()
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
		if raceDetector && n > 1000 { // nothing here runs at the same time
			continue
		}
		for name, values := range binnable(n) {
			what := fmt.Sprintf("%s, %d values", name, n)
			sorted := slices.Sorted(slices.Values(values))
			low, high := symmetricRanks(n, 0.95)
			b := binned(values, (sorted[high]-sorted[low])/4)
			require.Equal(t, n, b.size(), what)
			assert.Equal(t, true, b.width > 0 && b.width <= max((sorted[high]-sorted[low])/1e4, 1e-12*math.Abs(sorted[low]), 1e-300), "%s: width %v", what, b.width)
			first, last := b.low+b.width, b.low+float64(len(b.through)-1)*b.width
			for k := 0; k < n; k += 1 + n/500 {
				if v := sorted[k]; first < v && v < last {
					near.Absolute(t, what+", rank", v, b.at(k), b.width*(1+1e-6))
				}
			}
			assert.Equal(t, true, first < sorted[low] && sorted[high] < last, "%s: the interval lies inside", what)
			assert.Equal(t, true, sorted[0] <= b.at(0) && b.at(n-1) <= sorted[n-1], what)
			checkBinnedCounts(t, what, sorted, b)
			checkBinnedShortest(t, what, sorted, b)
		}
	}
}

// slack is the width of a bin, or of a digit of x where that is wider.
func (b *bins) slack(x float64) float64 { return 1.001*b.width + 0x1p-52*math.Abs(x) }

func checkBinnedCounts(t *testing.T, what string, sorted []float64, b *bins) {
	t.Helper()
	count := func(x float64) float64 {
		n, _ := slices.BinarySearch(sorted, x)
		return float64(n)
	}
	last := 0.0
	for k := 0; k < len(sorted); k += 1 + len(sorted)/200 {
		x := sorted[k] + 0.3*b.width
		below := b.below(x, false)
		assert.Equal(t, true, last <= below, "%s: counts rise", what)
		last = below
		if x > b.low+b.width && x < b.low+float64(len(b.through)-1)*b.width {
			// At most as many as before the next bin, at least those before this.
			assert.Equal(t, true, count(x-b.slack(x)) <= below && below <= count(x+b.slack(x)), "%s: %v below %v", what, below, x)
		}
	}
	n := float64(len(sorted))
	least, most := sorted[0], sorted[len(sorted)-1]
	assert.Equal(t, []float64{0, 0, 0, n, n, n}, []float64{
		b.below(math.Inf(-1), true), b.below(math.Nextafter(least, math.Inf(-1)), true), b.below(least, false),
		b.below(most, true), b.below(math.Nextafter(most, math.Inf(1)), false), b.below(math.Inf(1), false),
	}, what)
}

// checkBinnedShortest: no shorter than the shortest by two bins, nor longer, and
// spanning as many.
func checkBinnedShortest(t *testing.T, what string, sorted []float64, b *bins) {
	t.Helper()
	q := spanOf(len(sorted), 0.95)
	low, high := shortestOf(sorted, q)
	gotLow, gotHigh := b.shortest(q)
	near.Absolute(t, what+", shortest", high-low, gotHigh-gotLow, 3*b.width)
	from, _ := slices.BinarySearch(sorted, gotLow-b.slack(gotLow))
	to, _ := slices.BinarySearch(sorted, gotHigh+b.slack(gotHigh))
	assert.Equal(t, true, to-from >= q, "%s: the shortest interval holds %d, not %d", what, to-from, q)
}

// TestWidthOfBins: a tenth of the numerical tolerance for two digits of u, at
// worst u/1980, whatever the coverage probability.
func TestWidthOfBins(t *testing.T) {
	for _, u := range []float64{0.995, 1.01, 5} {
		for _, d := range []Distribution{Normal{0, u}, PlusMinus(u * math.Sqrt(3)), Gamma{u / 2, u}} {
			sample := draws(d, 1, 2, 100_000)
			for _, coverage := range []float64{0.5, 0.95, 0.99, 0.999, 0.9999} {
				b := newBins(sample, coverage, u)
				assert.Equal(t, true, b.width <= numericalTolerance(u, 2)/10, "%#v, %v: %v", d, coverage, b.width)
				assert.Equal(t, true, len(b.through) <= mostBins)
			}
		}
	}
}

// longModel is skew and curved, and quick to draw.
func longModel() (*Model, Node) {
	m := new(Model)
	x := add(m, "x", Rectangular{1, 2})
	return m, m.Divide(add(m, "y", Normal{1, 0.1}), m.Multiply(x, x))
}

// TestLongRun compares a run whose values are not kept with the order statistics
// of the same trials.
func TestLongRun(t *testing.T) {
	if testing.Short() {
		t.Skip("keeps five million values")
	}
	const trials = 5_000_000
	m, y := longModel()
	mc := simulate(t, m, y, Settings{Trials: trials, Seed: 4})
	values := make([]float64, trials)
	err := m.Ready(y).newSampler(context.Background(), Settings{Seed: 4}).fill(context.Background(), values, 0)
	require.NoError(t, err)
	exact := newRanking(values)

	u := mc.StandardDeviation
	assert.Equal(t, true, mc.Resolution > 0 && mc.Resolution < numericalTolerance(u, 2)/10, "resolution %v", mc.Resolution)
	low, high := symmetricRanks(trials, 0.95)
	near.Absolute(t, "lower", exact.at(low), mc.Lower, mc.Resolution)
	near.Absolute(t, "upper", exact.at(high), mc.Upper, mc.Resolution)
	near.Relative(t, "error of the lower end", quantileError(exact, low), mc.LowerError, 0.05)
	near.Relative(t, "error of the upper end", quantileError(exact, high), mc.UpperError, 0.05)
	shortestLow, shortestHigh := exact.shortest(high - low)
	near.Absolute(t, "length of the shortest", shortestHigh-shortestLow, mc.ShortestUpper-mc.ShortestLower, 3*mc.Resolution)
	for _, p := range []float64{0.001, 0.1, 0.5, 0.9, 0.999} {
		near.Absolute(t, fmt.Sprint("quantile ", p), exact.at(int(p*trials)), mc.Quantile(p), mc.Resolution)
	}
	// A chance is off by no more than what lies within a bin of the limits, and
	// the density of y is below 2/u.
	inside := (exact.below(0.8, true) - exact.below(0.3, false)) / trials
	near.Absolute(t, "chance", inside, mc.ConformanceProbability(Limits{0.3, 0.8}), 2*mc.Resolution*2/u)
}

// TestLongAdaptiveRun: when the adaptive procedure passes what is kept, the ends
// stay those of all trials. Its sequences start on blocks of their own.
func TestLongAdaptiveRun(t *testing.T) {
	const sequences = KeptTrials/fewestTrials + 3
	m, y := sumOf(Normal{0, 0.9})
	s := Settings{Digits: 2, Validating: true, Trials: sequences * fewestTrials, Plain: true}
	mc := simulate(t, m, y, s)
	assert.Equal(t, s.Trials, mc.Trials)
	assert.Equal(t, true, mc.AtCeiling && mc.Resolution > 0)

	values, sampler := make([]float64, s.Trials), m.Ready(y).newSampler(context.Background(), s)
	for h := range sequences {
		err := sampler.fill(context.Background(), values[h*fewestTrials:(h+1)*fewestTrials], h*blocksFor(fewestTrials))
		require.NoError(t, err)
	}
	low, high := symmetricInterval(newRanking(values), 0.95)
	near.Absolute(t, "lower", low, mc.Lower, mc.Resolution)
	near.Absolute(t, "upper", high, mc.Upper, mc.Resolution)
}

// TestMemoryOfLongRuns: two million more trials, 16 MB of values, take no more
// memory. All that is ever allocated counts.
func TestMemoryOfLongRuns(t *testing.T) {
	m, y := sumOf(Rectangular{1, 2})
	allocated := func(trials int) float64 {
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		simulate(t, m, y, Settings{Trials: trials})
		runtime.ReadMemStats(&after)
		return float64(after.TotalAlloc - before.TotalAlloc)
	}
	few := allocated(KeptTrials + 1)
	assert.Equal(t, true, few < 24<<20, "%v bytes", few)
	more := allocated(KeptTrials+2_000_000) - few
	assert.Equal(t, true, more < 1<<20, "%v bytes more", more)
}

// TestLongConstant: where nothing is uncertain all answers are exact.
func TestLongConstant(t *testing.T) {
	m := new(Model)
	mc := simulate(t, m, m.Constant(5), Settings{Trials: KeptTrials + 1})
	assert.Equal(t, []float64{5, 5, 5, 5, 5}, []float64{mc.Lower, mc.Upper, mc.ShortestLower, mc.ShortestUpper, mc.Quantile(0.3)})
	above, under := math.Nextafter(5, 6), math.Nextafter(5, 4)
	for limits, want := range map[Limits]float64{{5, 5}: 1, {5, 6}: 1, {4, 5}: 1, {above, 6}: 0, {4, under}: 0} {
		assert.Equal(t, want, mc.ConformanceProbability(limits), "%v", limits)
	}
}
