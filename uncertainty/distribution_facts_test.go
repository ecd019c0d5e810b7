package uncertainty

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty/distribution"
	"minim/uncertainty/near"
	"minim/uncertainty/portable"
)

func TestVariances(t *testing.T) {
	for _, c := range []struct {
		source string
		d      Distribution
		want   float64
	}{
		// JCGM 101, the clauses named.
		{"6.4.2", Rectangular{Low: 2, High: 5}, 9.0 / 12},
		{"6.4.3", InexactRectangular{2, 5, 0.6}, 9.0/12 + 0.36/9},
		{"6.4.4", Trapezoidal{2, 5, 0.5}, 9 * 1.25 / 24},
		{"6.4.5", distribution.Triangular{Low: 2, High: 5}, 9.0 / 24},
		{"6.4.6", Arcsine{2, 5}, 9.0 / 8},
		{"6.4.9", StudentT{Mu: 7, Sigma: 2, Nu: 6}, 4 * 6.0 / 4},
		// Constructed, closed form: t with σ = 1, ν = 5 and 3.
		{"t, 5", StudentT{Mu: 0, Sigma: 1, Nu: 5}, 1.2909944 * 1.2909944},
		{"t, 3", StudentT{Mu: 0, Sigma: 1, Nu: 3}, 1.7320508 * 1.7320508},
		// The variance of a stated mean and standard deviation.
		{"gamma", Gamma{Mu: 0.04, Sigma: 0.02}, 0.0004},
		{"normal", Normal{Mu: 1, Sigma: 0.02}, 0.0004},
	} {
		near.Relative(t, c.source, c.want, variance(c.d), 1e-7)
	}
}

// TestStandardUncertainty: JCGM 100, 4.3.7 example 1, 4.4.5, 4.4.6, F.2.2.1
// and H.1.3.4; QUAM A1 (flask ±0.1 mL, distribution.Triangular); JCGM 101, 6.4.3.4. Published
// rounding, then recomputed.
func TestStandardUncertainty(t *testing.T) {
	for _, c := range []struct {
		source                 string
		d                      Distribution
		published, by, correct float64
	}{
		{"4.3.7 ex. 1", PlusMinus(0.40e-6), 0.23e-6, 0.005e-6, 2.3094011e-7},
		{"4.4.5", Rectangular{Low: 96, High: 104}, 2.3, 0.05, 2.3094011},
		{"4.4.6", distribution.Triangular{Low: 96, High: 104}, 1.6, 0.05, 1.6329932},
		{"F.2.2.1", PlusMinus(0.5), 0.29, 0.005, 0.28867513},
		{"H.1.3.4", Arcsine{-0.5, 0.5}, 0.35, 0.005, 0.35355339},
		{"101, 6.4.3.4", InexactRectangular{9.9, 10.1, 0.05}, 0.060, 0.0005, 0.060092521},
		{"101, 6.4.3.4, exact limits", Rectangular{Low: 9.9, High: 10.1}, 0.058, 0.0005, 0.057735027},
		{"QUAM A1", Peaked(0.1), 0.04, 0.005, 0.040824829},
		// The t keeps its scale, whatever its variance.
		{"t", StudentT{Mu: 10, Sigma: 0.04, Nu: 3}, 0.04, 0, 0.04},
	} {
		u := c.d.Summary().StandardUncertainty
		near.Absolute(t, c.source+", published", c.published, u, c.by)
		near.Relative(t, c.source, c.correct, u, 1e-7)
	}
}

// TestHalfWidths: half-width of the central interval over the standard
// deviation. Constructed, closed forms: normal; rectangular p√3; triangular
// √6(1 - √(1-p)); arcsine √2 sin(πp/2); trapezoidal p(1 + β)/2 on the top and
// 1 - √((1-p)(1-β²)) on the flank, over √((1 + β²)/6). Within half a unit of
// the last digit.
func TestHalfWidths(t *testing.T) {
	p := []float64{0.6827, 0.90, 0.95, 0.9545, 0.99, 0.9973}
	for _, c := range []struct {
		d    Distribution
		want []float64
	}{
		{Normal{Mu: 3, Sigma: 2}, []float64{1.0000217, 1.6448536, 1.9599640, 2.0000024, 2.5758293, 2.9999770}},
		{Rectangular{Low: 2, High: 4}, []float64{1.1824711, 1.5588457, 1.6454483, 1.6532425, 1.7147303, 1.7273743}},
		{distribution.Triangular{Low: 2, High: 4}, []float64{1.0697072, 1.6748931, 1.9017672, 1.9269957, 2.2045408, 2.3222105}},
		{Arcsine{2, 4}, []float64{1.2421631, 1.3968022, 1.4098540, 1.4106031, 1.4140391, 1.4142008}},
		{Trapezoidal{2, 4, 0.25}, []float64{1.0802740, 1.6487472, 1.8618583, 1.8855564, 2.1462646, 2.2567961}},
		{Trapezoidal{2, 4, 0.5}, []float64{1.1221152, 1.5908902, 1.7666262, 1.7861681, 2.0011536, 2.0923002}},
		{Trapezoidal{2, 4, 2.0 / 3}, []float64{1.1595083, 1.5577142, 1.6984156, 1.7140616, 1.8861878, 1.9591634}},
		{Trapezoidal{2, 4, 0.75}, []float64{1.1705867, 1.5497138, 1.6697643, 1.6831139, 1.8299770, 1.8922420}},
	} {
		for i, want := range c.want {
			for _, side := range []float64{-1, 1} {
				k := side * (quantileOf(c.d, (1+side*p[i])/2) - c.d.Summary().Mean) / c.d.Summary().StandardUncertainty
				near.Absolute(t, fmt.Sprintf("%#v at %v", c.d, p[i]), want, k, 0.5000001e-7)
			}
		}
	}
}

// TestHalfWidthOne: standard deviation and kurtosis for limits of ±1.
// Constructed, closed forms. Within half a unit of the last digit.
func TestHalfWidthOne(t *testing.T) {
	for _, c := range []struct {
		d                   Distribution
		deviation, kurtosis float64
	}{
		{PlusMinus(1), 0.57735027, 1.8},
		{Peaked(1), 0.40824829, 2.4},
		{Arcsine{-1, 1}, 0.70710678, 1.5},
		{Trapezoidal{-1, 1, 0.5}, 0.45643546, 2.016},
		{Trapezoidal{-1, 1, 2.0 / 3}, 0.49065338, 1.8887574},
		{Trapezoidal{-1, 1, 0.25}, 0.42081271, 0},
		{Trapezoidal{-1, 1, 0.75}, 0.51031036, 0},
		{InexactRectangular{-1, 1, 0.1}, 0.57831172, 0},
		{InexactRectangular{-1, 1, 0.5}, 0.60092521, 0},
	} {
		near.Absolute(t, fmt.Sprintf("u of %#v", c.d), c.deviation, c.d.Summary().StandardUncertainty, 0.5e-8)
		if c.kurtosis != 0 {
			near.Absolute(t, fmt.Sprintf("kurtosis of %#v", c.d), c.kurtosis, c.d.Summary().Kurtosis, 0.5e-7)
		}
	}
}

// TestInexactRectangularQuantiles. Constructed: half-widths that hold 95 % by
// quadrature; and where D is half of the width, the distance from the middle
// is the product of two uniform values, with distribution z(1 - ln z).
func TestInexactRectangularQuantiles(t *testing.T) {
	for _, c := range []struct{ half, d, p, want, by float64 }{
		{1, 0.1, 0.95, 0.95504824, 0.5e-8},
		{1, 0.5, 0.95, 1.1297542, 0.5e-7},
		{0.5, 0.5, 0.025, 0.0038042235, 0.5e-10},
		{0.5, 0.5, 0.05, 0.0087049407, 0.5e-10},
		{0.5, 0.5, 0.5, 0.18668231, 0.5e-8},
		{0.5, 0.5, 0.95, 0.70092001, 0.5e-8},
		{0.5, 0.5, 0.975, 0.78489190, 0.5e-8},
	} {
		d := InexactRectangular{-c.half, c.half, c.d}
		near.Absolute(t, fmt.Sprintf("%#v, upper", d), c.want, quantileOf(d, (1+c.p)/2), c.by)
		near.Absolute(t, fmt.Sprintf("%#v, lower", d), -c.want, quantileOf(d, (1-c.p)/2), c.by)
	}
	whole := InexactRectangular{-0.5, 0.5, 0.5}
	assert.Equal(t, 0.0, quantileOf(whole, 0.5))
	assert.Equal(t, -1.0, quantileOf(whole, 1e-300))
}

// TestDepth puts the solution into the equation c = 1 - (1 + L) exp(-L), which
// is the series Σ (-1)^k (k - 1)/k! L^k from k = 2 on.
func TestDepth(t *testing.T) {
	for c := 1e-250; c < 0.01; c *= 3 {
		l := depth(c)
		near.Relative(t, fmt.Sprintf("series at %v", c), c, l*l*(1.0/2-l*(1.0/3-l*(1.0/8-l*(1.0/30-l*(1.0/144-l/840))))), 1e-9)
	}
	for c := 0.9; c > 1e-15; c /= 3 {
		l := depth(1 - c)
		near.Relative(t, fmt.Sprintf("complement of %v", c), 1-(1-c), (1+l)*math.Exp(-l), 1e-12)
	}
}

func TestMomentsThatDoNotExist(t *testing.T) {
	assert.Equal(t, true, math.IsInf(variance(StudentT{Mu: 0, Sigma: 1, Nu: 2}), 1))
	assert.Equal(t, true, math.IsNaN(StudentT{Mu: 0, Sigma: 1, Nu: 3}.Summary().Skewness))
	assert.Equal(t, true, math.IsInf(StudentT{Mu: 0, Sigma: 1, Nu: 4}.Summary().Kurtosis, 1))
}

// TestUnsound: what is no distribution is refused before it is drawn from.
func TestUnsound(t *testing.T) {
	for _, d := range []Distribution{
		Normal{Mu: math.NaN(), Sigma: 1}, Normal{Mu: 0, Sigma: -1}, Normal{Mu: 0, Sigma: math.Inf(1)}, Rectangular{Low: 1, High: 0}, distribution.Triangular{Low: 1, High: 0},
		Gamma{Mu: 1, Sigma: 0}, Gamma{Mu: 0, Sigma: 1}, Gamma{Mu: 0, Sigma: 0}, Gamma{Mu: -1, Sigma: 1}, StudentT{Mu: 0, Sigma: 1, Nu: 0}, StudentT{Mu: 0, Sigma: 1, Nu: -1},
		StudentT{Mu: 0, Sigma: 1, Nu: math.NaN()}, StudentT{Mu: 0, Sigma: 1, Nu: math.Inf(1)},
	} {
		message := fmt.Sprintf("uncertainty: influence \"x\": %#v is not a distribution", d)
		panics(t, message, func() { add(new(Model), "x", d) })
	}
	panics(t, `uncertainty: influence "x" has no distribution`, func() { add(new(Model), "x", nil) })
}

func TestSound(t *testing.T) {
	inf, nan := math.Inf(1), math.NaN()
	for _, d := range []Distribution{
		Normal{Mu: 0, Sigma: 1}, Normal{Mu: -3, Sigma: 0}, StudentT{Mu: 0, Sigma: 1, Nu: 5}, StudentT{Mu: 1, Sigma: 0, Nu: 0.5}, Gamma{Mu: 1, Sigma: 2}, Gamma{Mu: 1e-9, Sigma: 1e-3},
		Rectangular{Low: 1, High: 2}, Rectangular{Low: 1, High: 1}, distribution.Triangular{Low: -1, High: 2}, distribution.Triangular{Low: 0, High: 0}, Arcsine{1, 2}, Arcsine{3, 3},
		Trapezoidal{1, 2, 0}, Trapezoidal{1, 2, 1}, Trapezoidal{1, 1, 0.5},
		InexactRectangular{1, 2, 0}, InexactRectangular{1, 2, 0.5}, InexactRectangular{1, 1, 0},
	} {
		assert.Equal(t, true, d.Sound(), "%#v", d)
	}
	for _, d := range []Distribution{
		Normal{Mu: nan, Sigma: 1}, Normal{Mu: inf, Sigma: 1}, Normal{Mu: 0, Sigma: nan}, Normal{Mu: 0, Sigma: inf}, Normal{Mu: 0, Sigma: -1},
		StudentT{Mu: nan, Sigma: 1, Nu: 5}, StudentT{Mu: 0, Sigma: nan, Nu: 5}, StudentT{Mu: 0, Sigma: -1, Nu: 5}, StudentT{Mu: 0, Sigma: inf, Nu: 5},
		StudentT{Mu: 0, Sigma: 1, Nu: 0}, StudentT{Mu: 0, Sigma: 1, Nu: -1}, StudentT{Mu: 0, Sigma: 1, Nu: 5e-324}, StudentT{Mu: 0, Sigma: 1, Nu: nan}, StudentT{Mu: 0, Sigma: 1, Nu: inf},
		Gamma{Mu: 0, Sigma: 1}, Gamma{Mu: -1, Sigma: 1}, Gamma{Mu: 1, Sigma: 0}, Gamma{Mu: 1, Sigma: -1}, Gamma{Mu: -1, Sigma: -1}, Gamma{Mu: nan, Sigma: 1}, Gamma{Mu: 1, Sigma: nan}, Gamma{Mu: inf, Sigma: 1},
		Gamma{Mu: 1, Sigma: inf}, Gamma{Mu: 1, Sigma: 1e-200}, Gamma{Mu: 1e-200, Sigma: 1},
		Rectangular{Low: 1, High: 0}, Rectangular{Low: nan, High: 1}, Rectangular{Low: 0, High: nan}, Rectangular{Low: 0, High: inf}, Rectangular{Low: -inf, High: 0},
		Rectangular{Low: inf, High: inf}, Rectangular{Low: -1e308, High: 1e308},
		distribution.Triangular{Low: 1, High: 0}, distribution.Triangular{Low: nan, High: 1}, distribution.Triangular{Low: 0, High: inf}, Arcsine{1, 0}, Arcsine{0, nan}, Arcsine{-inf, 0},
		Trapezoidal{1, 0, 0.5}, Trapezoidal{0, inf, 0.5}, Trapezoidal{0, 1, -0.1}, Trapezoidal{0, 1, 1.1}, Trapezoidal{0, 1, nan},
		InexactRectangular{1, 0, 0}, InexactRectangular{0, inf, 0.1}, InexactRectangular{0, 1, -0.1},
		InexactRectangular{0, 1, 0.6}, InexactRectangular{0, 1, nan}, InexactRectangular{1, 1, 0.1},
		InexactRectangular{-8e307, 8e307, 8e307},
	} {
		assert.Equal(t, false, d.Sound(), "%#v", d)
	}
}

// TestZeroWidth: a distribution of zero width is its mean.
func TestZeroWidth(t *testing.T) {
	for _, d := range []Distribution{
		Normal{Mu: 3, Sigma: 0}, StudentT{Mu: 3, Sigma: 0, Nu: 5}, Rectangular{Low: 3, High: 3}, distribution.Triangular{Low: 3, High: 3}, Arcsine{3, 3}, Trapezoidal{3, 3, 0.5},
		InexactRectangular{3, 3, 0},
	} {
		assert.Equal(t, []float64{3, 3, 3}, draws(d, 1, 2, 3), "%#v", d)
		assert.Equal(t, []float64{3, 3, 0}, []float64{d.Summary().Mean, quantileOf(d, 0.3), d.Summary().StandardUncertainty}, "%#v", d)
		assert.Equal(t, true, portable.IsFinite(d.Summary().Kurtosis), "%#v", d)
	}
}
