package uncertainty

import (
	"context"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty/near"
	"minim/uncertainty/random"
	"minim/uncertainty/statistics"
)

// byClause follows JCGM 101, 7.9.4 step by step and keeps all values: it returns
// how many trials the procedure asks for, or most when those are not enough.
func byClause(t *testing.T, m *Model, out Node, s Settings) (trials int, all []float64) {
	t.Helper()
	// Step b: M = max(J, 10⁴), J the smallest integer not below 100/(1 - p).
	M := max(10_000, int(math.Ceil(100/(1-s.Coverage)-1e-6)))
	s.Plain = true
	sampler := m.Ready(out).newSampler(context.Background(), s)
	var y, u, low, high []float64
	for h := 1; h*M <= s.Trials; h++ {
		// Steps c to f: model values of one sequence, with its four figures.
		values := make([]float64, M)
		err := sampler.fill(context.Background(), values, (h-1)*((M+random.BlockSize-1)/random.BlockSize))
		require.NoError(t, err)
		all = append(all, values...)
		slices.Sort(values)
		q := int(s.Coverage*float64(M) + 0.5)
		r := (M - q + 1) / 2
		mean, deviation := meanAndDeviation(values)
		y, u, low, high = append(y, mean), append(u, deviation), append(low, values[r-1]), append(high, values[r+q-1])
		if h == 1 {
			continue // step g
		}
		// Steps h to k: standard deviations of the averages, against δ/2 with δ
		// from the u of all values.
		delta := toleranceByClause(t, s, all)
		if 2*ofAverage(y) <= delta && 2*ofAverage(u) <= delta && 2*ofAverage(low) <= delta && 2*ofAverage(high) <= delta {
			return h * M, all
		}
	}
	return len(all), all
}

func meanAndDeviation(values []float64) (mean, deviation float64) {
	for _, v := range values {
		mean += v / float64(len(values))
	}
	for _, v := range values {
		deviation += (v - mean) * (v - mean) / float64(len(values)-1)
	}
	return mean, math.Sqrt(deviation)
}

// ofAverage is s_z with s_z² = Σ (z_r - z)²/(h (h - 1)).
func ofAverage(z []float64) float64 {
	_, deviation := meanAndDeviation(z)
	return deviation / math.Sqrt(float64(len(z)))
}

// toleranceByClause is δ of 7.9.2, by way of the digits that are printed.
func toleranceByClause(t *testing.T, s Settings, all []float64) float64 {
	_, u := meanAndDeviation(all)
	_, exponent, _ := strings.Cut(strconv.FormatFloat(u, 'e', s.Digits-1, 64), "e")
	place, err := strconv.Atoi(exponent)
	require.NoError(t, err)
	delta := 0.5 * math.Pow(10, float64(place-s.Digits+1))
	if s.Validating {
		return delta / 5 // 8.2
	}
	return delta
}

// adaptiveCases stop after a few sequences, after many, and at the ceiling.
var adaptiveCases = []struct {
	name      string
	model     func(m *Model) Node
	settings  Settings
	atCeiling bool
}{
	{"normal", func(m *Model) Node { return add(m, "x", Normal{Mu: 3, Sigma: 1.5}) }, Settings{Digits: 1, Seed: 1, Coverage: 0.95, Trials: 500_000}, false},
	{"validating", func(m *Model) Node { return add(m, "x", Normal{Mu: 3, Sigma: 1.5}) }, Settings{Digits: 1, Seed: 2, Coverage: 0.95, Trials: 500_000, Validating: true}, false},
	// δ is 0.005: two digits of what is just below a power of ten are the hardest.
	{"two digits", func(m *Model) Node { return add(m, "x", Rectangular{Low: 0, High: 0.9 * math.Sqrt(12)}) }, Settings{Digits: 2, Seed: 3, Coverage: 0.95, Trials: 900_000}, false},
	{"skew, 99.5 %", func(m *Model) Node { return add(m, "x", Gamma{Mu: 2, Sigma: 2}) }, Settings{Digits: 1, Seed: 4, Coverage: 0.995, Trials: 900_000}, false},
	{"curved", func(m *Model) Node {
		x := add(m, "x", Normal{Mu: 0, Sigma: 1})
		return m.Multiply(x, m.Multiply(x, x))
	}, Settings{Digits: 1, Seed: 5, Coverage: 0.9, Trials: 900_000}, false},
	{"the ceiling", func(m *Model) Node { return add(m, "x", Normal{Mu: 3, Sigma: 0.95}) }, Settings{Digits: 2, Seed: 6, Coverage: 0.95, Trials: 47_000}, true},
	{"a ceiling of one sequence", func(m *Model) Node { return add(m, "x", Normal{Mu: 3, Sigma: 1}) }, Settings{Digits: 1, Seed: 7, Coverage: 0.95, Trials: 19_999}, true},
}

func TestAdaptive(t *testing.T) {
	for _, c := range adaptiveCases {
		m := new(Model)
		out := c.model(m)
		trials, all := byClause(t, m, out, c.settings)
		c.settings.Plain = true
		mc := simulate(t, m, out, c.settings)
		assert.Equal(t, trials, mc.Trials, c.name)
		slices.Sort(all)
		low, high := statistics.SymmetricRanks(trials, c.settings.Coverage)
		assert.Equal(t, []float64{all[low], all[high]}, []float64{mc.Lower, mc.Upper}, "%s: the ends are those of all values", c.name)
		mean, u := meanAndDeviation(all)
		near.Absolute(t, c.name+", mean", mean, mc.Mean, 5*u/math.Sqrt(float64(trials)))
		assert.Equal(t, c.atCeiling, mc.AtCeiling, "%s: %d trials", c.name, mc.Trials)
	}
}

// TestAdaptiveOfConstants stops after the two sequences that it takes to see
// that nothing scatters.
func TestAdaptiveOfConstants(t *testing.T) {
	m := new(Model)
	mc := simulate(t, m, m.Constant(3), Settings{Digits: 2})
	assert.Equal(t, 2*fewestTrials, mc.Trials)
	assert.Equal(t, false, mc.AtCeiling)
	assert.Equal(t, []float64{3, 0, 3, 3}, []float64{mc.Mean, mc.StandardDeviation, mc.Lower, mc.Upper})
}

// TestAdaptiveErrors: a number of digits that cannot be counted, or of trials
// that are fewer than one sequence.
func TestAdaptiveErrors(t *testing.T) {
	m := new(Model)
	x := add(m, "x", Normal{Mu: 1, Sigma: 1})
	for _, c := range []struct {
		out      Node
		settings Settings
		want     string
	}{
		{x, Settings{Digits: 1, Trials: 9_999}, "a coverage probability of 0.95 needs at least 10000 trials, found 9999"},
		{x, Settings{Digits: 3}, "one or two significant digits can be asked for, found 3"},
		{x, Settings{Digits: -1}, "one or two significant digits can be asked for, found -1"},
	} {
		mc, err := m.Simulate(context.Background(), c.out, c.settings)
		assert.Equal(t, c.want, fmt.Sprint(err))
		assert.Equal(t, MonteCarlo{}, mc)
	}
}

// TestDefaultCeiling: KeptTrials where digits are asked for, DefaultTrials where
// they are not.
func TestDefaultCeiling(t *testing.T) {
	assert.Equal(t, KeptTrials, Settings{Digits: 2}.WithDefaults().Trials)
	assert.Equal(t, DefaultTrials, Settings{}.WithDefaults().Trials)
	assert.Equal(t, 12_345, Settings{Trials: 12_345, Digits: 1}.WithDefaults().Trials)
}

// TestErrorsOfEnds holds the standard errors of the ends against their scatter
// over seeds, with the exact end of a normal distribution. An error that is
// found from some 30 values scatters itself by a fifth, which makes the mean
// square greater than 1 by a tenth.
func TestErrorsOfEnds(t *testing.T) {
	skipUnderRace(t)
	m, y := sumOf(Normal{Mu: 3, Sigma: 2})
	lower, upper := &differences{}, &differences{}
	for seed := range uint64(400) {
		mc := simulate(t, m, y, Settings{Trials: fewestTrials, Seed: seed, Plain: true})
		lower.add(t, "lower", 3-2*1.9599640, mc.Lower, mc.LowerError, 2)
		upper.add(t, "upper", 3+2*1.9599640, mc.Upper, mc.UpperError, 2)
	}
	for _, d := range []*differences{lower, upper} {
		near.Absolute(t, "mean difference", 0, d.sum/d.n, 5/math.Sqrt(d.n))
		near.Absolute(t, "mean square difference", 1.1, d.squares/d.n, 5*math.Sqrt(2/d.n))
	}
}
