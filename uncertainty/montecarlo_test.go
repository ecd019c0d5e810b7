package uncertainty

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"

	"minim/uncertainty/near"
	"minim/uncertainty/portable"
	"minim/uncertainty/sharp"
)

// sumOf adds one influence for each distribution.
func sumOf(distributions ...Distribution) (*Model, Node) {
	m := new(Model)
	y := m.Constant(0)
	for i, d := range distributions {
		y = m.Add(y, add(m, string(rune('a'+i)), d))
	}
	return m, y
}

// TestAdditiveModels: JCGM 101, 9.2.2 to 9.2.4. Published intervals ±3.92,
// ±3.88 and ±17.0; the exact ones here, within five standard errors. Published U
// of 9.2.4: 19.9 (19.891827 with k = 1.96, 19.891462 with the exact factor).
func TestAdditiveModels(t *testing.T) {
	one := Rectangular{Low: -math.Sqrt(3), High: math.Sqrt(3)}
	for _, c := range []struct {
		clause      string
		x1, x4      Distribution
		u, end, gum float64
		uError      float64 // standard error of the SD from 10^6 trials
	}{
		{"9.2.2", Normal{Mu: 0, Sigma: 1}, Normal{Mu: 0, Sigma: 1}, 2, 3.9199280, 3.9199280, 0.0014},
		{"9.2.3", one, one, 2, 3.879406741, 3.9199280, 0.0013},
		{"9.2.4", one, PlusMinus(10 * math.Sqrt(3)), 10.148892, 17.0158141, 19.891462, 0.0047},
	} {
		m, y := sumOf(c.x1, c.x1, c.x1, c.x4)
		a := propagate(t, m, y, 0.95)
		near.Relative(t, c.clause+": u", c.u, a.StandardUncertainty, 1e-7)
		near.Relative(t, c.clause+": U", c.gum, a.ExpandedUncertainty, 1e-7)
		mc := simulate(t, m, y, Settings{Seed: 9})
		near.Absolute(t, c.clause+": mean", 0, mc.Mean, 5*c.u/1000)
		near.Absolute(t, c.clause+": SD", c.u, mc.StandardDeviation, 5*c.uError)
		brackets(t, c.clause+": lower", &mc, 0.025, -c.end)
		brackets(t, c.clause+": upper", &mc, 0.975, c.end)
		assert.Equal(t, true, mc.ShortestUpper-mc.ShortestLower <= mc.Upper-mc.Lower)
	}
}

// TestInterval: the ends are the order statistics of JCGM 101, 7.7.2.
func TestInterval(t *testing.T) {
	m, y := sumOf(Gamma{Mu: 1, Sigma: 1})
	mc := simulate(t, m, y, Settings{Trials: 100_000, Coverage: 0.9})
	assert.Equal(t, []float64{mc.tally.At(4999), mc.tally.At(94_999)}, []float64{mc.Lower, mc.Upper})
	low, high, _ := mc.tally.Shortest(t.Context(), 90_000)
	assert.Equal(t, []float64{low, high}, []float64{mc.ShortestLower, mc.ShortestUpper})
	// Constructed, exponential: the shortest 90 % interval is [0, ln 10].
	near.Absolute(t, "shortest length", math.Ln10, high-low, 5*math.Sqrt(0.09/1e5)/0.1)
	assert.Equal(t, 100_000, mc.Trials)
	assert.Equal(t, 0.9, mc.CoverageProbability)
	assert.Equal(t, fewestTrials, simulate(t, m, y, Settings{}).Trials, "they are enough")
	assert.Equal(t, 0.95, simulate(t, m, y, Settings{Trials: 10_000}).CoverageProbability)
}

// TestCalibrationStandardSimulated: QUAM A1, constructed: 10^7 trials of
// testdata/independent/published.py give these figures.
func TestCalibrationStandardSimulated(t *testing.T) {
	m := new(Model)
	mc := simulate(t, m, calibrationStandard(m), Settings{Seed: 3})
	near.Absolute(t, "mean", 1002.69955, mc.Mean, 5*0.00088)
	near.Absolute(t, "SD", 0.83539, mc.StandardDeviation, 5*0.0006)
	near.Absolute(t, "lower", 1001.07959, mc.Lower, 5*0.0023)
	near.Absolute(t, "upper", 1004.32286, mc.Upper, 5*0.0023)
}

// TestMomentsOfTrials holds the sums of the blocks, also of the last and short
// one, against gonum's stat over all trials: n - 1 in the denominator.
func TestMomentsOfTrials(t *testing.T) {
	m, y := sumOf(Normal{Mu: 1e6, Sigma: 1}, Gamma{Mu: 1, Sigma: 2})
	s := m.Ready(y).newSampler(context.Background(), Settings{})
	s.control = sharp.NewControl([]float64{1e6, 1e6 + 2}, nil, 1e6, 0, nil) // the trials alone
	values := make([]float64, 10_001)
	err := s.fill(context.Background(), values, 0)
	require.NoError(t, err)
	mean, sd := stat.MeanStdDev(values, nil)
	near.Relative(t, "mean", mean, s.control.Mean(&s.total).Value, 1e-15)
	near.Relative(t, "SD", sd, s.control.Deviation(&s.total).Value, 1e-11)
	near.Relative(t, "error of the mean", sd/math.Sqrt(10_001), s.control.Mean(&s.total).Err, 1e-4)
	fourth := stat.Moment(4, values, nil)
	near.Relative(t, "error of the SD", math.Sqrt((fourth-sd*sd*sd*sd)/10_001)/(2*sd), s.control.Deviation(&s.total).Err, 1e-2)
}

// TestLinearModel: the mean and the standard deviation of a sum are exact, since
// its linear part is the whole of it.
func TestLinearModel(t *testing.T) {
	m, y := sumOf(Normal{Mu: 1e6, Sigma: 1}, Gamma{Mu: 1, Sigma: 2}, PlusMinus(3))
	mc := simulate(t, m, y, Settings{Trials: 10_000})
	near.Relative(t, "mean", 1e6+1, mc.Mean, 1e-15)
	near.Relative(t, "SD", math.Sqrt(1+4+3), mc.StandardDeviation, 1e-9)
}

func TestNoVariance(t *testing.T) {
	for nu, none := range map[float64]bool{1: true, 2: true, 2.1: false, 3: false} {
		m, y := sumOf(Normal{Mu: 1, Sigma: 1}, StudentT{Mu: 0, Sigma: 1, Nu: nu})
		add(m, "unused", StudentT{Mu: 0, Sigma: 1, Nu: 1})
		mc := simulate(t, m, y, Settings{Trials: 10_000})
		assert.Equal(t, none, math.IsNaN(mc.StandardDeviation), "t with %v degrees of freedom", nu)
		assert.Equal(t, true, portable.IsFinite(mc.Lower) && portable.IsFinite(mc.Upper))
	}
}

func TestConstantSimulated(t *testing.T) {
	m := new(Model)
	mc := simulate(t, m, m.Multiply(m.Constant(3), m.Constant(4)), Settings{Trials: 10_000})
	assert.Equal(t, []float64{12, 0, 12, 12}, []float64{mc.Mean, mc.StandardDeviation, mc.Lower, mc.ShortestUpper})
}

func TestSimulateErrors(t *testing.T) {
	m := new(Model)
	x := add(m, "x", Normal{Mu: 0, Sigma: 1})
	_, err := m.Simulate(context.Background(), m.Divide(x, x), Settings{})
	assert.Equal(t, standardDivisor("x"), err)
	huge := m.Multiply(m.Multiply(x, m.Constant(1e300)), m.Constant(1e300))
	_, err = m.Simulate(context.Background(), huge, Settings{Trials: 10_000})
	assert.Equal(t, ErrNotFinite, err)
	large := simulate(t, m, m.Multiply(x, m.Constant(1e200)), Settings{Trials: 10_000})
	near.Relative(t, "a standard deviation whose square overflows", 1e200, large.StandardDeviation, 1e-9)
	cancelled, cancel := context.WithCancel(context.Background())
	cancel()
	_, err = m.Simulate(cancelled, x, Settings{})
	assert.Equal(t, context.Canceled, err)
}
