package uncertainty

import (
	"math"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"
)

// comparisonLoss is JCGM 101, 9.4: δY = X1² + X2² with u = 0.005 for both and the
// coefficient r, in units of 1e-6.
func comparisonLoss(t testing.TB, x1, r float64) (*Model, Node) {
	m := new(Model)
	a, b := add(m, "X1", Normal{Mu: x1, Sigma: 0.005}), add(m, "X2", Normal{Mu: 0, Sigma: 0.005})
	require.NoError(t, m.Correlate([]Node{a, b}, mat.NewSymDense(2, []float64{1, r, r, 1})))
	return m, m.Multiply(m.Constant(1e6), m.Add(m.Multiply(a, a), m.Multiply(b, b)))
}

// lossExample: G1 is of first and G2 of second order, both with k = 1.96. At x1 = 0
// the first order sees no uncertainty at all.
func lossExample(r, x1 float64) example {
	return func(t testing.TB) quantities {
		m, y := comparisonLoss(t, x1, r)
		a, second := propagate(t, m, y, 0.95), secondOrder(t, m, y)
		mc := simulate(t, m, y, Settings{Trials: trials, Seed: 25})
		f := exactly(map[string]float64{"estimate": a.Value, "shift of second order": second.Shift})
		for name, u := range map[string]float64{"G1 ": a.StandardUncertainty, "G2 ": second.StandardUncertainty} {
			f.with(exactly(map[string]float64{"u": u, "lower": a.Value - 1.96*u, "upper": a.Value + 1.96*u}).prefixed(name))
		}
		f.with(meanAndSD(&mc))
		if r == 0 {
			f.with(ends(&mc), shortestLength(&mc))
		}
		return f
	}
}

// lossExamples are those of all estimates x1 and coefficients r.
func lossExamples() map[string]example {
	examples := make(map[string]example)
	for _, r := range []float64{0, 0.9} {
		for _, x1 := range []float64{0, 0.010, 0.050} {
			name := "9.4 r " + strconv.FormatFloat(r, 'g', -1, 64) + ", x1 " + strconv.FormatFloat(x1, 'g', -1, 64)
			examples[name] = lossExample(r, x1)
		}
	}
	return examples
}

// lossIntervals is F.2.7 and F.2.8: shortest and symmetric interval at x1 = 0,
// where the distribution is exponential.
func lossIntervals(t testing.TB) quantities {
	m, y := comparisonLoss(t, 0, 0)
	mc := simulate(t, m, y, Settings{Trials: trials, Seed: 26})
	shortest := shortestLength(&mc)["length of the shortest interval"]
	whole := figure{mc.Upper - mc.Lower, math.Hypot(mc.LowerError, mc.UpperError)}
	ratio := whole.value / shortest.value
	return quantities{
		"shortest upper": {mc.ShortestUpper, shortest.err}, "shortest lower": {mc.ShortestLower, mc.LowerError},
		"symmetric over shortest": {ratio, ratio * math.Hypot(whole.err/whole.value, shortest.err/shortest.value)},
	}
}
