package uncertainty

import (
	"math"
	"testing"

	"minim/uncertainty/near"
)

// trials of the simulations of this file, and the unit of their standard errors.
const trials = 400_000

var perRoot = 1 / math.Sqrt(trials)

// TestProductsAndRatios: constructed, exact quantiles (closed forms and root
// finding) and moments of products, ratios and squares, with their first-order
// standard uncertainty.
func TestProductsAndRatios(t *testing.T) {
	ln3, ln119 := math.Log(3), math.Log(1.1/0.9)
	for _, c := range []struct {
		name                 string
		x, y                 Distribution
		divide               bool
		mean, sd, u          float64 // mean 0: no moments
		lower, median, upper float64 // 0: not given
	}{
		// CDF z(1 - ln z).
		{"U(0,1) U(0,1)", Rectangular{0, 1}, Rectangular{0, 1}, false, 0.25, math.Sqrt(7) / 12, 0.20412415, 0.0038042235, 0.18668231, 0.78489190},
		{"(10±1)(5±0.5)", Rectangular{9, 11}, Rectangular{4.5, 5.5}, false, 50, 4.0858836, 4.0824829, 0, 0, 0},
		{"(1±0.5)(1±0.5)", Rectangular{0.5, 1.5}, Rectangular{0.5, 1.5}, false, 1, 0.41666667, 0.40824829, 0, 0, 0},
		{"1/U(0.9,1.1)", Normal{1, 0}, Rectangular{0.9, 1.1}, true, ln119 / 0.2, 0.058161926, 0.057735027, 0.91324201, 1, 1.1049724},
		{"1/U(0.5,1.5)", Normal{1, 0}, Rectangular{0.5, 1.5}, true, ln3, 0.35550580, 0.28867513, 0.67796610, 1, 1.9047619},
		{"(100±1)/(10±0.2)", Rectangular{99, 101}, Rectangular{9.8, 10.2}, true, 10.001334, 0.12913492, 0.12909944, 0, 0, 0},
		{"N(1,0.1)/N(1,0.05)", Normal{1, 0.1}, Normal{1, 0.05}, true, 0, 0, 0.11180340, 0.78929286, 1, 1.2301007},
		{"N(100,1)/N(10,0.2)", Normal{100, 1}, Normal{10, 0.2}, true, 0, 0, 0.22360680, 9.5765212, 10, 10.454258},
		{"N(1,0.2)/N(1,0.2)", Normal{1, 0.2}, Normal{1, 0.2}, true, 0, 0, 0.28284271, 0.55221055, 0.9999998, 1.8108973},
	} {
		m := new(Model)
		x, y := add(m, "x", c.x), add(m, "y", c.y)
		out := m.Multiply(x, y)
		if c.divide {
			out = m.Divide(x, y)
		}
		near.Relative(t, c.name+": first-order u", c.u, propagate(t, m, out, 0.95).StandardUncertainty, 1e-7)
		mc := simulate(t, m, out, Settings{Trials: trials, Seed: 12})
		if c.mean != 0 {
			near.Absolute(t, c.name+": mean", c.mean, mc.Mean, 5*c.sd*perRoot)
			near.Relative(t, c.name+": SD", c.sd, mc.StandardDeviation, 5*1.2*perRoot)
		}
		if c.median != 0 {
			brackets(t, c.name+": lower", &mc, 0.025, c.lower)
			brackets(t, c.name+": median", &mc, 0.5, c.median)
			brackets(t, c.name+": upper", &mc, 0.975, c.upper)
		}
	}
}

// TestCorrelatedRatio: N(1,0.1)/N(1,0.1) with r = 0.9, made of a common part
// with 0.9 of the variance and own parts: constructed, exact quantiles.
func TestCorrelatedRatio(t *testing.T) {
	m := new(Model)
	common := add(m, "common", Normal{1, 0.1 * math.Sqrt(0.9)})
	part := func(name string) Node { return m.Add(common, add(m, name, Normal{0, 0.1 * math.Sqrt(0.1)})) }
	out := m.Divide(part("x"), part("y"))
	near.Relative(t, "first-order u", 0.04472136, propagate(t, m, out, 0.95).StandardUncertainty, 1e-7)
	mc := simulate(t, m, out, Settings{Trials: trials, Seed: 13})
	brackets(t, "lower", &mc, 0.025, 0.91451977)
	brackets(t, "median", &mc, 0.5, 1)
	brackets(t, "upper", &mc, 0.975, 1.0934701)
}

// TestSquare: N(1,0.1)², constructed: mean 1.01, SD 0.20049938, first order 0.2.
func TestSquare(t *testing.T) {
	m := new(Model)
	x := add(m, "x", Normal{1, 0.1})
	out := m.Multiply(x, x)
	near.Relative(t, "first-order u", 0.2, propagate(t, m, out, 0.95).StandardUncertainty, 1e-14)
	mc := simulate(t, m, out, Settings{Trials: trials, Seed: 14})
	near.Absolute(t, "mean", 1.01, mc.Mean, 5*0.2*perRoot)
	near.Relative(t, "SD", 0.20049938, mc.StandardDeviation, 5*0.75*perRoot)
}

// TestCauchy: the t-distribution with one degree of freedom is the standard
// Cauchy distribution: quartiles ±1, 97.5 % at 12.706205.
func TestCauchy(t *testing.T) {
	m, y := sumOf(StudentT{0, 1, 1})
	mc := simulate(t, m, y, Settings{Trials: trials, Seed: 15})
	brackets(t, "lower", &mc, 0.025, -12.706205)
	brackets(t, "quartile", &mc, 0.25, -1)
	brackets(t, "upper", &mc, 0.975, 12.706205)
}

// TestComparisonLoss: JCGM 101, 9.4 and annex F, X1² + X2² with u = 0.005 (×1e-6):
// at x1 = 0 the first-order u is 0 while the distribution is exponential with
// mean and SD 50, and its 95 % interval [1.2658904, 184.44397].
func TestComparisonLoss(t *testing.T) {
	for _, c := range []struct{ x1, first, mean, sd, lower, upper float64 }{
		{0, 0, 50, 50, 1.2658904, 184.44397},
		{0.010, 100, 150, 111.80340, 8.5468449, 427.12328},
		{0.050, 500, 2550, 502.49378, 1638.4771, 3603.3581},
	} {
		m := new(Model)
		x1, x2 := add(m, "x1", Normal{c.x1, 0.005}), add(m, "x2", Normal{0, 0.005})
		out := m.Multiply(m.Constant(1e6), m.Add(m.Multiply(x1, x1), m.Multiply(x2, x2)))
		a := propagate(t, m, out, 0.95)
		near.Absolute(t, "first-order u", c.first, a.StandardUncertainty, 1e-9)
		mc := simulate(t, m, out, Settings{Trials: trials, Seed: 16})
		near.Absolute(t, "mean", c.mean, mc.Mean, 5*c.sd*perRoot)
		near.Relative(t, "SD", c.sd, mc.StandardDeviation, 5*1.5*perRoot)
		brackets(t, "lower", &mc, 0.025, c.lower)
		brackets(t, "upper", &mc, 0.975, c.upper)
	}
}
