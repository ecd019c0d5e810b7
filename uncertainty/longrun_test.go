package uncertainty

import (
	"context"
	"fmt"
	"math"
	"runtime"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty/near"
	"minim/uncertainty/random"
	"minim/uncertainty/rounding"
	"minim/uncertainty/statistics"
)

// TestWidthOfBins: a tenth of the numerical tolerance for two digits of u, at
// worst u/1980, whatever the coverage probability.
func TestWidthOfBins(t *testing.T) {
	skipUnderRace(t)
	for _, u := range []float64{0.995, 1.01, 5} {
		for _, d := range []Distribution{Normal{Mu: 0, Sigma: u}, PlusMinus(u * math.Sqrt(3)), Gamma{Mu: u / 2, Sigma: u}} {
			sample := draws(d, 1, 2, 100_000)
			for _, coverage := range []float64{0.5, 0.95, 0.99, 0.999, 0.9999} {
				b, err := statistics.NewBins(t.Context(), sample, coverage, u)
				require.NoError(t, err)
				assert.Equal(t, true, b.Width <= rounding.Tolerance(u, 2)/10, "%#v, %v: %v", d, coverage, b.Width)
			}
		}
	}
}

// longModel is skew and curved, and quick to draw.
func longModel() (*Model, Node) {
	m := new(Model)
	x := add(m, "x", Rectangular{Low: 1, High: 2})
	return m, m.Divide(add(m, "y", Normal{Mu: 1, Sigma: 0.1}), m.Multiply(x, x))
}

// TestLongRun compares a run whose values are not kept with the order statistics
// of the same trials.
func TestLongRun(t *testing.T) {
	skipUnderRace(t)
	if testing.Short() {
		t.Skip("keeps five million values")
	}
	const trials = 5_000_000
	m, y := longModel()
	mc := simulate(t, m, y, Settings{Trials: trials, Seed: 4})
	values := make([]float64, trials)
	err := m.Ready(y).newSampler(context.Background(), Settings{Seed: 4}).fill(context.Background(), values, 0)
	require.NoError(t, err)
	exact := ranked(t, values)

	u := mc.StandardDeviation
	assert.Equal(t, true, mc.Resolution > 0 && mc.Resolution < rounding.Tolerance(u, 2)/10, "resolution %v", mc.Resolution)
	low, high := statistics.SymmetricRanks(trials, 0.95)
	near.Absolute(t, "lower", exact.At(low), mc.Lower, mc.Resolution)
	near.Absolute(t, "upper", exact.At(high), mc.Upper, mc.Resolution)
	near.Relative(t, "error of the lower end", statistics.QuantileError(exact, low), mc.LowerError, 0.05)
	near.Relative(t, "error of the upper end", statistics.QuantileError(exact, high), mc.UpperError, 0.05)
	shortestLow, shortestHigh, _ := exact.Shortest(t.Context(), high-low)
	near.Absolute(t, "length of the shortest", shortestHigh-shortestLow, mc.ShortestUpper-mc.ShortestLower, 3*mc.Resolution)
	for _, p := range []float64{0.001, 0.1, 0.5, 0.9, 0.999} {
		near.Absolute(t, fmt.Sprint("quantile ", p), exact.At(int(p*trials)), mc.Quantile(p), mc.Resolution)
	}
	// A chance is off by no more than what lies within a bin of the limits, and
	// the density of y is below 2/u.
	inside := (exact.Below(0.8, true) - exact.Below(0.3, false)) / trials
	near.Absolute(t, "chance", inside, mc.ConformanceProbability(Limits{0.3, 0.8}), 2*mc.Resolution*2/u)
}

// TestLongAdaptiveRun: when the adaptive procedure passes what is kept, the ends
// stay those of all trials. Its sequences start on blocks of their own.
func TestLongAdaptiveRun(t *testing.T) {
	skipUnderRace(t)
	const sequences = KeptTrials/fewestTrials + 3
	m, y := sumOf(Normal{Mu: 0, Sigma: 0.9})
	s := Settings{Digits: 2, Validating: true, Trials: sequences * fewestTrials, Plain: true}
	mc := simulate(t, m, y, s)
	assert.Equal(t, s.Trials, mc.Trials)
	assert.Equal(t, true, mc.AtCeiling && mc.Resolution > 0)

	values, sampler := make([]float64, s.Trials), m.Ready(y).newSampler(context.Background(), s)
	for h := range sequences {
		err := sampler.fill(context.Background(), values[h*fewestTrials:(h+1)*fewestTrials], h*random.Blocks(fewestTrials))
		require.NoError(t, err)
	}
	low, high := statistics.SymmetricInterval(ranked(t, values), 0.95)
	near.Absolute(t, "lower", low, mc.Lower, mc.Resolution)
	near.Absolute(t, "upper", high, mc.Upper, mc.Resolution)
}

// TestMemoryOfLongRuns: two million more trials, 16 MB of values, take no more
// memory. All that is ever allocated counts.
func TestMemoryOfLongRuns(t *testing.T) {
	skipUnderRace(t)
	m, y := sumOf(Rectangular{Low: 1, High: 2})
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
	skipUnderRace(t)
	m := new(Model)
	mc := simulate(t, m, m.Constant(5), Settings{Trials: KeptTrials + 1})
	assert.Equal(t, []float64{5, 5, 5, 5, 5}, []float64{mc.Lower, mc.Upper, mc.ShortestLower, mc.ShortestUpper, mc.Quantile(0.3)})
	above, under := math.Nextafter(5, 6), math.Nextafter(5, 4)
	for limits, want := range map[Limits]float64{{5, 5}: 1, {5, 6}: 1, {4, 5}: 1, {above, 6}: 0, {4, under}: 0} {
		assert.Equal(t, want, mc.ConformanceProbability(limits), "%v", limits)
	}
}
