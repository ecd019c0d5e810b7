package uncertainty

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"

	"minim/uncertainty/distribution"
	"minim/uncertainty/near"
	"minim/uncertainty/portable"
	"minim/uncertainty/random"
)

// reference is an independent implementation: gonum's distuv.
type reference interface {
	CDF(x float64) float64
}

var distributions = []struct {
	d Distribution
	r reference
}{
	{Normal{Mu: 0, Sigma: 1}, distuv.UnitNormal},
	{Normal{Mu: 100.28, Sigma: 0.05}, distuv.Normal{Mu: 100.28, Sigma: 0.05}},
	{Normal{Mu: -3e-9, Sigma: 1e-9}, distuv.Normal{Mu: -3e-9, Sigma: 1e-9}},
	{Rectangular{Low: 0, High: 1}, distuv.Uniform{Min: 0, Max: 1}},
	{Rectangular{Low: 97, High: 100}, distuv.Uniform{Min: 97, Max: 100}},
	{PlusMinus(0.084), distuv.Uniform{Min: -0.084, Max: 0.084}},
	{distribution.Triangular{Low: 0, High: 1}, distuv.NewTriangle(0, 1, 0.5, nil)},
	{distribution.Triangular{Low: 24.9, High: 25.1}, distuv.NewTriangle(24.9, 25.1, 25, nil)},
	{Peaked(0.1), distuv.NewTriangle(-0.1, 0.1, 0, nil)},
	{Trapezoidal{0, 1, 0.5}, cutTriangle{0, 1, 0.5}},
	{Trapezoidal{24.9, 25.1, 0.25}, cutTriangle{24.9, 25.1, 0.25}},
	{Trapezoidal{-3e-9, 1e-9, 0.9}, cutTriangle{-3e-9, 1e-9, 0.9}},
	{Trapezoidal{-2, 1, 0}, distuv.NewTriangle(-2, 1, -0.5, nil)},
	{Trapezoidal{97, 100, 1}, distuv.Uniform{Min: 97, Max: 100}},
	{InexactRectangular{9.9, 10.1, 0.05}, inexact{9.9, 10.1, 0.05}},
	{InexactRectangular{-1e-6, 1e-6, 1e-7}, inexact{-1e-6, 1e-6, 1e-7}},
	{InexactRectangular{0, 1, 1e-9}, inexact{0, 1, 1e-9}},
	{InexactRectangular{-1, 1, 1}, productOfUniforms{2}},
	{InexactRectangular{97, 100, 0}, distuv.Uniform{Min: 97, Max: 100}},
	{Arcsine{0, 1}, distuv.Beta{Alpha: 0.5, Beta: 0.5}},
	{Arcsine{-0.5, 0.5}, stretched{distuv.Beta{Alpha: 0.5, Beta: 0.5}, -0.5, 1}},
	{Arcsine{97, 100}, stretched{distuv.Beta{Alpha: 0.5, Beta: 0.5}, 97, 3}},
	{StudentT{Mu: 0, Sigma: 1, Nu: 5}, distuv.StudentsT{Sigma: 1, Nu: 5}},
	{StudentT{Mu: 10, Sigma: 0.04, Nu: 50}, distuv.StudentsT{Mu: 10, Sigma: 0.04, Nu: 50}},
	{StudentT{Mu: 0, Sigma: 2, Nu: 8.5}, distuv.StudentsT{Sigma: 2, Nu: 8.5}},
	{StudentT{Mu: 0, Sigma: 1, Nu: 3}, distuv.StudentsT{Sigma: 1, Nu: 3}},
	{StudentT{Mu: 0, Sigma: 1, Nu: 1}, distuv.StudentsT{Sigma: 1, Nu: 1}},
	{StudentT{Mu: 0, Sigma: 1, Nu: 2}, distuv.StudentsT{Sigma: 1, Nu: 2}},
	{Gamma{Mu: 0.04, Sigma: 0.02}, distuv.Gamma{Alpha: 4, Beta: 100}},
	{Gamma{Mu: 1, Sigma: 1}, distuv.Gamma{Alpha: 1, Beta: 1}},
	{Gamma{Mu: 1, Sigma: 2.5}, distuv.Gamma{Alpha: 0.16, Beta: 0.16}},
	{Gamma{Mu: 0.4, Sigma: 0.02}, distuv.Gamma{Alpha: 400, Beta: 1000}},
	{Gamma{Mu: 1, Sigma: 0.9}, distuv.Gamma{Alpha: 1 / 0.81, Beta: 1 / 0.81}},
	{Gamma{Mu: 1, Sigma: 1.1}, distuv.Gamma{Alpha: 1 / 1.21, Beta: 1 / 1.21}},
	{GammaBelow(0.4, 0.8, 2), below{distuv.Gamma{Alpha: 0.25, Beta: 0.625}, 2}},
	{GammaBelow(0.1, 0.05, 0.2), below{distuv.Gamma{Alpha: 4, Beta: 40}, 0.2}},
	{GammaBelow(0.1, 0.05, 0.1), below{distuv.Gamma{Alpha: 4, Beta: 40}, 0.1}},
	tabulatedFrom(Prior{Of: PlusMinus(1)}, Measured{Mean: 0.2, Scale: 0.3, Nu: 3}),
	tabulatedFrom(Prior{Of: Peaked(0.008)}, Measured{Mean: -0.006, Scale: 0.001, Nu: 4}),
	tabulatedFrom(Prior{Of: Normal{Mu: 10, Sigma: 0.3}}, Measured{Mean: 10.4, Scale: 0.4, Nu: math.Inf(1)}),
}

// tabulatedFrom is what is known after a measurement, beside the quadrature of the product.
func tabulatedFrom(p Prior, m Measured) struct {
	d Distribution
	r reference
} {
	return struct {
		d Distribution
		r reference
	}{p.Given(m), newByQuadrature(p, m)}
}

// TestMoments holds the stated moments against numerical integrals.
func TestMoments(t *testing.T) {
	skipUnderRace(t)
	for _, c := range distributions {
		t.Run(fmt.Sprintf("%#v", c.d), func(t *testing.T) {
			limit := 1e-9
			if _, ok := c.d.(Tabulated); ok {
				limit = 1e-5 // of the integral over so many pieces
			}
			near.Absolute(t, "first central moment over u", 0, moment(c.d, 1), limit)
			if _, ok := c.d.(Tabulated); ok {
				return // which is straight in 512 pieces: TestPriorGiven
			}
			variance := variance(c.d) / math.Pow(c.d.Summary().StandardUncertainty, 2)
			if math.IsInf(variance, 1) {
				return
			}
			near.Relative(t, "variance over u²", variance, moment(c.d, 2), 1e-8)
			if s := c.d.Summary().Skewness; !math.IsNaN(s) {
				near.Equal(t, "skewness", s, moment(c.d, 3)/math.Pow(variance, 1.5), 1e-8, 1e-8)
			}
			if k := c.d.Summary().Kurtosis; !math.IsInf(k, 1) {
				near.Relative(t, "kurtosis", k, moment(c.d, 4)/(variance*variance), 1e-8)
			}
		})
	}
}

// moment integrates ((x - μ)/u)^k over the probability p, with x = Quantile(p),
// from 0 and from 1 to the middle, in pieces between which all is smooth.
func moment(d Distribution, k float64) float64 {
	z := func(p float64) float64 {
		return math.Pow((quantileOf(d, p)-d.Summary().Mean)/d.Summary().StandardUncertainty, k)
	}
	lopsided := ofGamma(d)
	both := func(p float64) float64 {
		switch {
		case lopsided && p < 1e-15:
			return 0
		case lopsided || p > 1e-6:
			return z(p) + z(1-p)
		}
		return z(p) + math.Pow(-1, k)*z(p) // 1 - p has too few digits
	}
	kink := flankOf(d)
	return tanhSinh(both, 0, kink) + tanhSinh(both, kink, 0.5)
}

// flankOf is the probability of the flank of a trapezoid, else 1/4.
func flankOf(d Distribution) float64 {
	switch d := d.(type) {
	case Trapezoidal:
		return (1 - d.Beta) / (1 + d.Beta) / 2
	case InexactRectangular:
		if d.D > 0 {
			return inexact(d).CDF(d.Low + d.D)
		}
	}
	return 0.25
}

// tanhSinh integrates f from a to b by the rule x = a + (b - a)/(1 + exp(π sinh s)).
func tanhSinh(f func(float64) float64, a, b float64) float64 {
	const h = 1.0 / 32
	sum := 0.0
	for s := -4.0; s < 5; s += h {
		e := math.Exp(-math.Pi * math.Sinh(s))
		x := a + (b-a)*(e/(1+e))
		if a < x && x < b {
			sum += h * (b - a) * math.Pi * math.Cosh(s) * e / ((1 + e) * (1 + e)) * f(x)
		}
	}
	return sum
}

func TestQuantile(t *testing.T) {
	skipUnderRace(t)
	for _, c := range distributions {
		t.Run(fmt.Sprintf("%#v", c.d), func(t *testing.T) {
			low, high := support(c.d)
			last := math.Inf(-1)
			limit := 1e-12
			if ofGamma(c.d) {
				limit = 1e-7 // gonum's inverse is no better
			}
			if _, ok := c.d.(Tabulated); ok {
				limit = 3e-6 // a table is no better
			}
			for i := 1; i < 200; i++ {
				p := float64(i) / 200
				x := quantileOf(c.d, p)
				assert.Equal(t, true, low <= x && x <= high, "quantile %v outside the support", x)
				assert.Equal(t, true, x > last, "quantiles do not rise at %v", p)
				near.Absolute(t, "Quantile then CDF", p, c.r.CDF(x), limit)
				last = x
			}
			for _, end := range []struct{ p, x float64 }{{0, low}, {1, high}} {
				if portable.IsFinite(end.x) {
					near.Absolute(t, "CDF at the end of the support", end.p, c.r.CDF(end.x), 1e-12)
				}
			}
		})
	}
}

// TestDraws holds draws against the reference by the Kolmogorov-Smirnov test
// (limit 1.95/√n, one in a thousand) and by their moments.
func TestDraws(t *testing.T) {
	skipUnderRace(t)
	const n = 100_000
	for _, c := range distributions {
		t.Run(fmt.Sprintf("%#v", c.d), func(t *testing.T) {
			x := draws(c.d, 1, 2, n)
			low, high := support(c.d)
			assert.Equal(t, true, low <= slices.Min(x) && slices.Max(x) <= high, "draws outside the support")
			if v := variance(c.d); !math.IsInf(v, 1) {
				near.Absolute(t, "mean of the draws", c.d.Summary().Mean, stat.Mean(x, nil), 5*math.Sqrt(v/n))
				near.Absolute(t, "lag-1 correlation", 0, stat.Correlation(x[1:], x[:n-1], nil), 5/math.Sqrt(n))
				if k := c.d.Summary().Kurtosis; !math.IsInf(k, 1) {
					near.Relative(t, "variance of the draws", v, stat.Variance(x, nil), 5*math.Sqrt((k-1)/n))
				}
			}
			slices.Sort(x)
			far, every := 0.0, 1
			if _, slow := c.r.(*byQuadrature); slow {
				every = 1000
			}
			for i := 0; i < n; i += every {
				p := c.r.CDF(x[i])
				far = max(far, p-float64(i)/n, float64(i+1)/n-p)
			}
			near.Absolute(t, "greatest distance from the distribution function", 0, far, 1.95/math.Sqrt(n))
		})
	}
}

// TestDrawsFillBins counts draws in 200 bins of equal probability, and holds
// the counts against the chi-square distribution (limit one in ten thousand).
// The bins end at our own quantiles, which TestQuantile holds.
func TestDrawsFillBins(t *testing.T) {
	skipUnderRace(t)
	const n, bins = 1_000_000, 200
	for _, c := range distributions {
		t.Run(fmt.Sprintf("%#v", c.d), func(t *testing.T) {
			var edges [bins - 1]float64
			for i := range edges {
				edges[i] = quantileOf(c.d, float64(i+1)/bins)
			}
			var counts [bins]float64
			for _, x := range draws(c.d, 3, 4, n) {
				i, _ := slices.BinarySearch(edges[:], x)
				counts[i]++
			}
			expected := slices.Repeat([]float64{n / bins}, bins)
			near.Absolute(t, "chi-square", 0, stat.ChiSquare(counts[:], expected), distuv.ChiSquared{K: bins - 1}.Quantile(0.9999))
		})
	}
}

// TestDrawsInPieces: a stream goes on where it stopped.
func TestDrawsInPieces(t *testing.T) {
	for _, c := range distributions {
		s := new(random.Source)
		s.Key(1, 2, 0)
		x := make([]float64, 6)
		for i := range x {
			c.d.Fill(x[i:i+1], s)
		}
		slices.Sort(x)
		assert.Equal(t, 6, len(slices.Compact(x)), "%#v repeats itself", c.d)
	}
}

// draws fills n values block by block, as the simulation does.
func draws(d Distribution, seed, influence uint64, n int) []float64 {
	s := new(random.Source)
	x := make([]float64, n)
	for b := 0; b*random.BlockSize < n; b++ {
		s.Key(seed, influence, b)
		d.Fill(x[b*random.BlockSize:min((b+1)*random.BlockSize, n)], s)
	}
	return x
}
