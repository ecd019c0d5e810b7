package uncertainty

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"

	"minim/uncertainty/near"
)

// reference is an independent implementation: gonum's distuv.
type reference interface {
	CDF(x float64) float64
}

var distributions = []struct {
	d Distribution
	r reference
}{
	{Normal{0, 1}, distuv.UnitNormal},
	{Normal{100.28, 0.05}, distuv.Normal{Mu: 100.28, Sigma: 0.05}},
	{Normal{-3e-9, 1e-9}, distuv.Normal{Mu: -3e-9, Sigma: 1e-9}},
	{Rectangular{0, 1}, distuv.Uniform{Min: 0, Max: 1}},
	{Rectangular{97, 100}, distuv.Uniform{Min: 97, Max: 100}},
	{PlusMinus(0.084), distuv.Uniform{Min: -0.084, Max: 0.084}},
	{Triangular{0, 1}, distuv.NewTriangle(0, 1, 0.5, nil)},
	{Triangular{24.9, 25.1}, distuv.NewTriangle(24.9, 25.1, 25, nil)},
	{Peaked(0.1), distuv.NewTriangle(-0.1, 0.1, 0, nil)},
	{StudentT{0, 1, 5}, distuv.StudentsT{Sigma: 1, Nu: 5}},
	{StudentT{10, 0.04, 50}, distuv.StudentsT{Mu: 10, Sigma: 0.04, Nu: 50}},
	{StudentT{0, 2, 8.5}, distuv.StudentsT{Sigma: 2, Nu: 8.5}},
	{StudentT{0, 1, 3}, distuv.StudentsT{Sigma: 1, Nu: 3}},
	{StudentT{0, 1, 1}, distuv.StudentsT{Sigma: 1, Nu: 1}},
	{Gamma{0.04, 0.02}, distuv.Gamma{Alpha: 4, Beta: 100}},
	{Gamma{1, 1}, distuv.Gamma{Alpha: 1, Beta: 1}},
	{Gamma{1, 2.5}, distuv.Gamma{Alpha: 0.16, Beta: 0.16}},
	{Gamma{0.4, 0.02}, distuv.Gamma{Alpha: 400, Beta: 1000}},
}

// TestMoments holds the stated moments against numerical integrals.
func TestMoments(t *testing.T) {
	for _, c := range distributions {
		t.Run(fmt.Sprintf("%#v", c.d), func(t *testing.T) {
			near.Absolute(t, "first central moment over u", 0, moment(c.d, 1), 1e-9)
			variance := c.d.Variance() / math.Pow(c.d.StandardUncertainty(), 2)
			if math.IsInf(variance, 1) {
				return
			}
			near.Relative(t, "variance over u²", variance, moment(c.d, 2), 1e-8)
			if s := c.d.Skewness(); !math.IsNaN(s) {
				near.Equal(t, "skewness", s, moment(c.d, 3)/math.Pow(variance, 1.5), 1e-8, 1e-8)
			}
			if k := c.d.Kurtosis(); !math.IsInf(k, 1) {
				near.Relative(t, "kurtosis", k, moment(c.d, 4)/(variance*variance), 1e-8)
			}
		})
	}
}

// moment integrates ((x - μ)/u)^k over the probability p, with x = Quantile(p),
// by the tanh-sinh rule p = 1/(1 + exp(-π sinh s)), in pairs p and 1 - p.
func moment(d Distribution, k float64) float64 {
	const h = 1.0 / 128
	z := func(p float64) float64 { return (d.Quantile(p) - d.Mean()) / d.StandardUncertainty() }
	sum := h * math.Pi / 4 * math.Pow(z(0.5), k)
	for s := h; s < 5; s += h {
		e := math.Exp(-math.Pi * math.Sinh(s))
		low := z(e / (1 + e))
		high := -low
		if _, lopsided := d.(Gamma); lopsided {
			if e < 1e-15 {
				break
			}
			high = z(1 / (1 + e))
		}
		weight := h * math.Pi * math.Cosh(s) * e / ((1 + e) * (1 + e))
		sum += weight * (math.Pow(low, k) + math.Pow(high, k))
	}
	return sum
}

func TestQuantile(t *testing.T) {
	for _, c := range distributions {
		t.Run(fmt.Sprintf("%#v", c.d), func(t *testing.T) {
			low, high := c.d.Support()
			last := math.Inf(-1)
			for i := 1; i < 200; i++ {
				p := float64(i) / 200
				x := c.d.Quantile(p)
				assert.Equal(t, true, low <= x && x <= high, "quantile %v outside the support", x)
				assert.Equal(t, true, x > last, "quantiles do not rise at %v", p)
				// gonum's inverse of the gamma distribution is good to 1e-7.
				near.Absolute(t, "Quantile then CDF", p, c.r.CDF(x), 1e-7)
				last = x
			}
			for _, end := range []struct{ p, x float64 }{{0, low}, {1, high}} {
				if finite(end.x) {
					near.Absolute(t, "CDF at the end of the support", end.p, c.r.CDF(end.x), 1e-12)
				}
			}
		})
	}
}

// TestDraws holds draws against the reference by the Kolmogorov-Smirnov test
// (limit 1.95/√n, one in a thousand) and by their moments.
func TestDraws(t *testing.T) {
	const n = 100_000
	for _, c := range distributions {
		t.Run(fmt.Sprintf("%#v", c.d), func(t *testing.T) {
			x := draws(c.d, 1, 2, n)
			if v := c.d.Variance(); !math.IsInf(v, 1) {
				near.Absolute(t, "mean of the draws", c.d.Mean(), stat.Mean(x, nil), 5*math.Sqrt(v/n))
				if k := c.d.Kurtosis(); !math.IsInf(k, 1) {
					near.Relative(t, "variance of the draws", v, stat.Variance(x, nil), 5*math.Sqrt((k-1)/n))
				}
			}
			slices.Sort(x)
			far := 0.0
			for i, v := range x {
				p := c.r.CDF(v)
				far = max(far, p-float64(i)/n, float64(i+1)/n-p)
			}
			near.Absolute(t, "greatest distance from the distribution function", 0, far, 1.95/math.Sqrt(n))
		})
	}
}

// draws fills n values block by block, as the simulation does.
func draws(d Distribution, seed, influence uint64, n int) []float64 {
	s := newSource()
	x := make([]float64, n)
	for b := 0; b*blockSize < n; b++ {
		s.key(seed, influence, b)
		d.fill(x[b*blockSize:min((b+1)*blockSize, n)], s)
	}
	return x
}
