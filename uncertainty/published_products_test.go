package uncertainty

import (
	"context"
	"math"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"
)

// distributionExamples are products, ratios and sums whose distribution is known
// exactly. Ratios with a normal denominator have no moments.
var distributionExamples = map[string]example{
	"U(0, 1) × U(0, 1)":            products.of(Rectangular{Low: 0, High: 1}, Rectangular{Low: 0, High: 1}),
	"U(0, 1) × U(0, 1), 90 %":      ninetyPercent,
	"(10 ± 1) × (5 ± 0.5)":         products.of(Rectangular{Low: 9, High: 11}, Rectangular{Low: 4.5, High: 5.5}),
	"(1 ± 0.5) × (1 ± 0.5)":        products.of(Rectangular{Low: 0.5, High: 1.5}, Rectangular{Low: 0.5, High: 1.5}),
	"N(1, 0.1)²":                   square,
	"1/U(0.9, 1.1)":                ratios.of(Normal{Mu: 1, Sigma: 0}, Rectangular{Low: 0.9, High: 1.1}),
	"1/U(0.5, 1.5)":                ratios.of(Normal{Mu: 1, Sigma: 0}, Rectangular{Low: 0.5, High: 1.5}),
	"(100 ± 1)/(10 ± 0.2)":         ratios.of(Rectangular{Low: 99, High: 101}, Rectangular{Low: 9.8, High: 10.2}),
	"N(1, 0.1)/N(1, 0.05)":         ratiosWithoutMoments.of(Normal{Mu: 1, Sigma: 0.1}, Normal{Mu: 1, Sigma: 0.05}),
	"N(100, 1)/N(10, 0.2)":         ratiosWithoutMoments.of(Normal{Mu: 100, Sigma: 1}, Normal{Mu: 10, Sigma: 0.2}),
	"N(1, 0.2)/N(1, 0.2)":          ratiosWithoutMoments.of(Normal{Mu: 1, Sigma: 0.2}, Normal{Mu: 1, Sigma: 0.2}),
	"N(1, 0.1)/N(1, 0.1), r = 0.9": correlatedRatio,
	"Cauchy":                       cauchy,
	"equal rectangles":             equalRectangles,
	"normal and rectangle":         normalAndRectangle,
}

// pairs says what is made of two influences, and whether it has moments.
type pairs struct {
	combine func(m *Model, x, y Node) Node
	moments bool
}

var (
	products             = pairs{(*Model).Multiply, true}
	ratios               = pairs{(*Model).Divide, true}
	ratiosWithoutMoments = pairs{(*Model).Divide, false}
)

func (p pairs) of(x, y Distribution) example {
	return func(t testing.TB) quantities {
		m := new(Model)
		return p.found(t, m, p.combine(m, add(m, "x", x), add(m, "y", y)))
	}
}

func (p pairs) found(t testing.TB, m *Model, out Node) quantities {
	u := standardUncertainty(t, m, out)
	mc := simulate(t, m, out, Settings{Trials: trials, Seed: 12})
	f := exactly(map[string]float64{"u": u, "y - 1.96 u": m.Expected(out) - 1.96*u, "y + 1.96 u": m.Expected(out) + 1.96*u})
	f["median"] = quantile(&mc, 0.5)
	if p.moments {
		f.with(meanAndSD(&mc))
	}
	return f.with(ends(&mc))
}

func ninetyPercent(t testing.TB) quantities {
	m := new(Model)
	y := m.Multiply(add(m, "x", Rectangular{Low: 0, High: 1}), add(m, "y", Rectangular{Low: 0, High: 1}))
	mc := simulate(t, m, y, Settings{Trials: trials, Seed: 13, Coverage: 0.90})
	return ends(&mc)
}

func square(t testing.TB) quantities {
	m := new(Model)
	x := add(m, "x", Normal{Mu: 1, Sigma: 0.1})
	y := m.Multiply(x, x)
	second := secondOrder(t, m, y)
	return products.found(t, m, y).with(exactly(map[string]float64{"mean of second order": 1 + second.Shift, "u of second order": second.StandardUncertainty}))
}

func correlatedRatio(t testing.TB) quantities {
	m := new(Model)
	x, y := add(m, "x", Normal{Mu: 1, Sigma: 0.1}), add(m, "y", Normal{Mu: 1, Sigma: 0.1})
	require.NoError(t, m.Correlate([]Node{x, y}, mat.NewSymDense(2, []float64{1, 0.9, 0.9, 1})))
	return ratiosWithoutMoments.found(t, m, m.Divide(x, y))
}

// cauchy: the t-distribution with one degree of freedom.
func cauchy(t testing.TB) quantities {
	m, y := sumOf(StudentT{Mu: 0, Sigma: 1, Nu: 1})
	mc := simulate(t, m, y, Settings{Trials: trials, Seed: 15})
	return quantities{"lower quartile": quantile(&mc, 0.25), "upper quartile": quantile(&mc, 0.75)}.with(ends(&mc))
}

// TestRatioOfZero: the ratio of two standard normal distributions is the same, but
// a divisor whose mean is 0 is an error, while one at 5 u is not.
func TestRatioOfZero(t *testing.T) {
	m := new(Model)
	out := m.Divide(add(m, "x", Normal{Mu: 0, Sigma: 1}), add(m, "y", Normal{Mu: 0, Sigma: 1}))
	want := standardDivisor("y")
	_, err := m.Propagate(out, 0.95)
	assert.Equal(t, want, err)
	_, err = m.Simulate(context.Background(), out, Settings{})
	assert.Equal(t, want, err)
	_, err = m.PropagateSecondOrder(out)
	assert.Equal(t, want, err)
}

// halfWidth of the symmetric interval, in standard deviations u.
func halfWidth(t testing.TB, distributions ...Distribution) figure {
	m, y := sumOf(distributions...)
	u := standardUncertainty(t, m, y)
	mc := simulate(t, m, y, Settings{Trials: trials, Seed: 16})
	return figure{(mc.Upper - mc.Lower) / 2 / u, math.Hypot(mc.LowerError, mc.UpperError) / 2 / u}
}

// equalRectangles: k95 of a sum of n.
func equalRectangles(t testing.TB) quantities {
	f := make(quantities)
	for _, n := range []int{1, 2, 3, 4, 5, 6, 12} {
		equal := make([]Distribution, n)
		for i := range equal {
			equal[i] = PlusMinus(1)
		}
		f["k95 for n "+strconv.Itoa(n)] = halfWidth(t, equal...)
	}
	return f
}

// normalAndRectangle: k95 of a sum for some ratios of the two standard deviations.
func normalAndRectangle(t testing.TB) quantities {
	f := make(quantities)
	for _, ratio := range []float64{0.5, 1, 2, 5, 10} {
		name := "k95 for u of the rectangle " + strconv.FormatFloat(ratio, 'g', -1, 64)
		f[name] = halfWidth(t, Normal{Mu: 0, Sigma: 1}, PlusMinus(ratio*math.Sqrt(3)))
	}
	return f
}
