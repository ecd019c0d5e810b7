package uncertainty

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/stat/distuv"

	"minim/uncertainty/distribution"
	"minim/uncertainty/near"
	"minim/uncertainty/portable"
)

// The normal case of JCGM 106, A.4.4, has a closed form, [Normal.Given]. Textbook numbers for its
// formulas A.13 and A.14, and others recomputed elsewhere: a batch and an absorbance, 0.02 % and a
// check (invented).
func TestPriorGivenNormal(t *testing.T) {
	for _, c := range []struct{ y0, u0, y, u, posterior, uAfter float64 }{
		{10, 0.3, 10.4, 0.4, 10.144, 0.24},
		{0.0401, 0.0010714286, 0.0385, 0.0008, 0.03907272, 0.00064102418},
		{0.02, 0.0007, 0.0208, 0.0005, 0.02052973, 0.00040686674},
	} {
		got := Prior{Of: Normal{Mu: c.y0, Sigma: c.u0}}.Given(Measured{Mean: c.y, Scale: c.u, Nu: math.Inf(1)}).Summary()
		near.Relative(t, "mean", c.posterior, got.Mean, 5e-7)
		near.Relative(t, "u", c.uAfter, got.StandardUncertainty, 5e-7)
		near.Absolute(t, "skewness", 0, got.Skewness, 1e-6)
		near.Absolute(t, "kurtosis", 3, got.Kurtosis, 1e-4)
		exact := given(Normal{Mu: c.y0, Sigma: c.u0}, c.y, c.u)
		near.Relative(t, "mean as in the closed form", exact.Mu, got.Mean, 1e-9)
	}
	// The same through a blur: a normal error of 0.18 on a prior of 0.24 is a prior of 0.3.
	blurred := Prior{Of: Normal{Mu: 9, Sigma: 0.24}, Shift: 1, Blur: 0.18}
	near.Relative(t, "blurred", 10.144, blurred.Given(Measured{Mean: 10.4, Scale: 0.4, Nu: math.Inf(1)}).Summary().Mean, 1e-9)
	near.Relative(t, "z = 0.8", 2*distuv.UnitNormal.CDF(-0.8), blurred.Chance(Measured{Mean: 10.4, Scale: 0.4, Nu: math.Inf(1)}), 1e-7)
}

// priors of all shapes with what was read, among them readings far outside, hardly any and many.
var priors = []struct {
	Prior
	Measured
}{
	{Prior{Of: PlusMinus(1)}, Measured{Mean: 0.2, Scale: 0.3, Nu: 3}},
	{Prior{Of: PlusMinus(1)}, Measured{Mean: 1.4, Scale: 0.3, Nu: 3}},
	{Prior{Of: PlusMinus(1)}, Measured{Mean: 0.5, Scale: 1e-4, Nu: 4}},
	{Prior{Of: PlusMinus(1)}, Measured{Mean: 0.5, Scale: 300, Nu: 4.5}},
	{Prior{Of: Peaked(1)}, Measured{Mean: 0.2, Scale: 0.3, Nu: 3}},
	{Prior{Of: Peaked(1)}, Measured{Mean: -0.9, Scale: 0.1, Nu: 9}},
	{Prior{Of: Peaked(0.008)}, Measured{Mean: -0.001, Scale: 0.0003, Nu: 4}},
	{Prior{Of: Peaked(1), Shift: -2, Blur: 0.5}, Measured{Mean: -1.7, Scale: 0.3, Nu: 3}},
	{Prior{Of: PlusMinus(1), Shift: -2, Blur: 0.05}, Measured{Mean: -0.7, Scale: 0.3, Nu: 3}},
	{Prior{Of: Normal{Mu: 0.3, Sigma: 0.5}}, Measured{Mean: 0.2, Scale: 0.3, Nu: 3}},
	{Prior{Of: Normal{Mu: 0.3, Sigma: 0.5}, Blur: 0.5}, Measured{Mean: -0.9, Scale: 0.01, Nu: 30}},
	{Prior{Of: PlusMinus(0.01)}, Measured{Mean: 0.004, Scale: 0.003, Nu: math.Inf(1)}},
}

// priorTimesLikelihood is prior times likelihood without the engine's formulas: a blur is added by quadrature.
func priorTimesLikelihood(p Prior, m Measured) func(x float64) float64 {
	shape := func(x float64) float64 {
		switch d := p.Of.(type) {
		case Normal:
			return distuv.Normal{Mu: d.Mu, Sigma: d.Sigma}.Prob(x)
		case Rectangular:
			return distuv.Uniform{Min: d.Low, Max: d.High}.Prob(x)
		}
		d := p.Of.(distribution.Triangular)
		return distuv.NewTriangle(d.Low, d.High, portable.Middle(d.Low, d.High), nil).Prob(x)
	}
	density := func(x float64) float64 { return shape(x - p.Shift) }
	if p.Blur > 0 {
		density = func(x float64) float64 {
			low, high := support(p.Of)
			at := p.Of.Summary().Mean
			from, to := max(low, at-9), min(high, at+9)
			f := func(e float64) float64 {
				return shape(e) * distuv.Normal{Mu: p.Shift, Sigma: p.Blur}.Prob(x-e)
			}
			sum := 0.0
			for _, piece := range pieces(from, to, at, x-p.Shift, x-p.Shift-5*p.Blur, x-p.Shift+5*p.Blur) {
				sum += quad.Fixed(f, piece[0], piece[1], 48, quad.Legendre{}, 0)
			}
			return sum
		}
	}
	return func(x float64) float64 {
		if math.IsInf(m.Nu, 1) {
			return density(x) * distuv.Normal{Mu: m.Mean, Sigma: m.Scale}.Prob(x)
		}
		return density(x) * distuv.StudentsT{Mu: m.Mean, Sigma: m.Scale, Nu: m.Nu}.Prob(x)
	}
}

// pieces part an interval at those places that lie in it.
func pieces(from, to float64, places ...float64) (list [][2]float64) {
	for from < to {
		next := to
		for _, p := range places {
			if p > from && p < next {
				next = p
			}
		}
		list = append(list, [2]float64{from, next})
		from = next
	}
	return list
}

// integral of prior times likelihood, in pieces between which all is smooth.
func (r byQuadrature) integral(from, to float64, f func(x float64) float64) float64 {
	m, mean := r.m, r.p.Mean()
	sum := 0.0
	for _, piece := range pieces(from, to, mean, m.Mean, m.Mean-10*m.Scale, m.Mean+10*m.Scale, m.Mean-m.Scale, m.Mean+m.Scale, mean-r.p.Blur, mean+r.p.Blur) {
		sum += tanhSinh(f, piece[0], piece[1])
	}
	return sum
}

// byQuadrature is the reference of a table: the same by quadrature of the product.
type byQuadrature struct {
	p         Prior
	m         Measured
	low, high float64
	all       float64
}

func newByQuadrature(p Prior, m Measured) *byQuadrature {
	r := &byQuadrature{p: p, m: m}
	about := p.Given(m).Summary()
	r.low, r.high = about.Low, about.High
	r.all = r.integral(r.low, r.high, priorTimesLikelihood(p, m))
	return r
}

func (r *byQuadrature) CDF(x float64) float64 {
	if x > r.m.Mean {
		return 1 - r.integral(x, r.high, priorTimesLikelihood(r.p, r.m))/r.all
	}
	return r.integral(r.low, x, priorTimesLikelihood(r.p, r.m)) / r.all
}

func TestPriorGiven(t *testing.T) {
	skipUnderRace(t)
	for _, c := range priors {
		d := c.Prior.Given(c.Measured)
		what := fmt.Sprintf("%v given %v", c.Prior, c.Measured)
		r := newByQuadrature(c.Prior, c.Measured)
		for _, p := range []float64{0.001, 0.025, 0.2, 0.5, 0.8, 0.975, 0.999} {
			near.Absolute(t, what, p, r.CDF(quantileOf(d, p)), 3e-6)
		}
		f := priorTimesLikelihood(c.Prior, c.Measured)
		mean := r.integral(r.low, r.high, func(x float64) float64 { return x * f(x) }) / r.all
		variance := r.integral(r.low, r.high, func(x float64) float64 { return (x - mean) * (x - mean) * f(x) }) / r.all
		s := d.Summary()
		near.Absolute(t, "mean of "+what, mean, s.Mean, 1e-6*math.Sqrt(variance))
		near.Relative(t, "u of "+what, math.Sqrt(variance), s.StandardUncertainty, 2e-5)
		cubes := r.integral(r.low, r.high, func(x float64) float64 { return math.Pow(x-mean, 3) * f(x) }) / r.all
		near.Absolute(t, "skewness of "+what, cubes/math.Pow(variance, 1.5), s.Skewness, 1e-3)
		assert.Equal(t, d, c.Prior.Given(c.Measured), "the same table is the same distribution")
	}
}

// A limit that says nothing leaves the t-distribution, one that says all leaves itself.
func TestPriorGivenInTheLimits(t *testing.T) {
	wide := Prior{Of: PlusMinus(1000)}.Given(Measured{Mean: 0.3, Scale: 0.5, Nu: 4})
	for _, p := range []float64{0.025, 0.3, 0.5, 0.9, 0.975} {
		near.Absolute(t, "wide", 0.3+0.5*portable.StudentQuantile(p, 4), quantileOf(wide, p), 2e-5)
	}
	narrow := Prior{Of: Peaked(1)}.Given(Measured{Mean: 0.3, Scale: 1000, Nu: 4})
	near.Absolute(t, "narrow", 1/math.Sqrt(6), narrow.Summary().StandardUncertainty, 1e-5)
	near.Absolute(t, "narrow", -1, narrow.Summary().Low, 0)
	near.Absolute(t, "narrow", 1, narrow.Summary().High, 0)
}

// The chance is that of the predictive distribution. Constructed: of a limit next to nothing it is
// that of t; of t next to nothing that of the limit; and two-sided.
func TestPriorChance(t *testing.T) {
	exact := Prior{Of: PlusMinus(1e-9)}
	near.Relative(t, "t = 3.182 with 3", 0.05, exact.Chance(Measured{Mean: 0.3182446, Scale: 0.1, Nu: 3}), 1e-5)
	near.Relative(t, "as far below", 0.05, exact.Chance(Measured{Mean: -0.3182446, Scale: 0.1, Nu: 3}), 1e-5)
	near.Relative(t, "far", 2*distuv.StudentsT{Sigma: 1, Nu: 4}.CDF(-50), exact.Chance(Measured{Mean: 5, Scale: 0.1, Nu: 4}), 1e-6)
	near.Absolute(t, "within a rectangle", 0.2, Prior{Of: PlusMinus(1)}.Chance(Measured{Mean: 0.8, Scale: 1e-6, Nu: 9}), 1e-4)
	near.Absolute(t, "within a triangle", 0.04, Prior{Of: Peaked(1)}.Chance(Measured{Mean: 0.8, Scale: 1e-6, Nu: 9}), 1e-4)
	near.Relative(t, "normal", 2*distuv.UnitNormal.CDF(-1.6), Prior{Of: Normal{Mu: 1, Sigma: 3}, Shift: 1}.Chance(Measured{Mean: 10, Scale: 4, Nu: math.Inf(1)}), 1e-6)
	near.Absolute(t, "in the middle", 1, Prior{Of: PlusMinus(1)}.Chance(Measured{Mean: 0, Scale: 0.1, Nu: 5}), 1e-12)
}

func TestPriorThatCannotBe(t *testing.T) {
	for _, c := range []struct {
		Prior
		Measured
	}{
		{Prior{Of: Gamma{Mu: 1, Sigma: 1}}, Measured{Mean: 1, Scale: 1, Nu: 1}}, {Prior{}, Measured{Mean: 1, Scale: 1, Nu: 1}}, {Prior{Of: PlusMinus(0)}, Measured{Mean: 1, Scale: 1, Nu: 1}},
		{Prior{Of: PlusMinus(1), Blur: -1}, Measured{Mean: 1, Scale: 1, Nu: 1}}, {Prior{Of: PlusMinus(1), Shift: math.NaN()}, Measured{Mean: 1, Scale: 1, Nu: 1}},
		{Prior{Of: PlusMinus(1)}, Measured{Mean: math.NaN(), Scale: 1, Nu: 1}}, {Prior{Of: PlusMinus(1)}, Measured{Mean: 1, Scale: 0, Nu: 1}},
		{Prior{Of: PlusMinus(1)}, Measured{Mean: 1, Scale: math.Inf(1), Nu: 1}}, {Prior{Of: PlusMinus(1)}, Measured{Mean: 1, Scale: 1, Nu: 0}},
		{Prior{Of: PlusMinus(1)}, Measured{Mean: 100, Scale: 1, Nu: math.Inf(1)}}, // which exclude each other
	} {
		assert.Panics(t, func() { c.Prior.Given(c.Measured) }, "%v", c)
	}
	assert.False(t, Tabulated{}.Sound())
}

// A table as wide as it should be about the same mean.
func TestTabulatedWidened(t *testing.T) {
	d := Prior{Of: Peaked(1)}.Given(Measured{Mean: 0.4, Scale: 0.3, Nu: 3})
	w := d.Widened(2)
	near.Relative(t, "mean", d.Summary().Mean, w.Summary().Mean, 1e-12)
	near.Relative(t, "u", 2*d.Summary().StandardUncertainty, w.Summary().StandardUncertainty, 1e-12)
	near.Relative(t, "skewness", d.Summary().Skewness, w.Summary().Skewness, 1e-9)
}
