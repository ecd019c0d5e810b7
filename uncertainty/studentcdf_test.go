package uncertainty

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"gonum.org/v1/gonum/stat/distuv"

	"minim/uncertainty/near"
)

// TestStudentCDF: the closed forms for one to four degrees of freedom
// (Abramowitz and Stegun, 26.7.3 and 26.7.4, from memory; the first is the
// Cauchy distribution), near 0 as well, where F(t) - 1/2 has to be right.
func TestStudentCDF(t *testing.T) {
	for nu, closed := range map[float64]func(x float64) float64{
		1: func(x float64) float64 { return math.Atan(x) / math.Pi },
		2: func(x float64) float64 { return x / (2 * math.Sqrt(2+x*x)) },
		3: func(x float64) float64 {
			s := x / math.Sqrt(3)
			return (math.Atan(s) + s/(1+s*s)) / math.Pi
		},
		4: func(x float64) float64 {
			s := x / math.Sqrt(4+x*x)
			return s * (3 - s*s) / 4
		},
	} {
		for _, x := range []float64{0, 1e-8, 1e-4, 0.3, 1, math.Nextafter(1, 2), 2, 40} {
			what := fmt.Sprintf("ν = %v, t = %v", nu, x)
			near.Absolute(t, what, closed(x), studentCDF(x, nu)-0.5, 2e-15)
			near.Absolute(t, what+" below", -closed(x), studentCDF(-x, nu)-0.5, 2e-15)
		}
	}
}

// TestStudentCDFForManyReadings: Abramowitz and Stegun, 26.7.8, from memory:
// t(1 - 1/4ν)/√(1 + t²/2ν) is normal but for terms of 1/ν².
func TestStudentCDFForManyReadings(t *testing.T) {
	for _, nu := range []float64{1e4, 1e5, 1e6} {
		for _, x := range []float64{-6, -3, -1, -0.2, -1e-4, 0.5, 2} {
			normal := distuv.UnitNormal.CDF(x * (1 - 1/(4*nu)) / math.Sqrt(1+x*x/(2*nu)))
			near.Absolute(t, fmt.Sprintf("ν = %v, t = %v", nu, x), normal, studentCDF(x, nu), 2e-10+0.1/(nu*nu))
		}
	}
}

// TestStudentQuantile goes there and back.
func TestStudentQuantile(t *testing.T) {
	for _, nu := range []float64{1, 2.5, 9, 200, 999, 1000, 5000, math.Inf(1)} {
		for _, p := range []float64{1e-6, 0.001, 0.05, 0.4, 0.5, 0.6, 0.95, 0.999} {
			q := studentQuantile(p, nu)
			near.Relative(t, fmt.Sprintf("ν = %v, p = %v", nu, p), p, studentCDF(q, nu), 1e-8)
		}
	}
}

// TestStudentConformance: constructed, ν = 2 between ±√2 is √(1/2), and the
// chance of lying far out on either side is the same.
func TestStudentConformance(t *testing.T) {
	d := StudentT{Mu: 10, Sigma: 0.5, Nu: 2}
	half := 0.5 * math.Sqrt2
	near.Relative(t, "between", math.Sqrt(0.5), d.ConformanceProbability(Limits{10 - half, 10 + half}), 1e-14)
	near.Relative(t, "above", 0.5-math.Sqrt(0.125), d.ConformanceProbability(Limits{10 + half, noUpper}), 1e-14)
	near.Relative(t, "no limits", 1, d.ConformanceProbability(Limits{noLower, noUpper}), 1e-15)
	far := StudentT{Mu: 0, Sigma: 1, Nu: 9}
	near.Relative(t, "far out", far.ConformanceProbability(Limits{100, 200}), far.ConformanceProbability(Limits{-200, -100}), 1e-15)
}

// TestFarBelow: Φ(-10) as in TestFarTails.
func TestFarBelow(t *testing.T) {
	near.Relative(t, "between", 7.6198530e-24, Normal{0, 1}.ConformanceProbability(Limits{-20, -10}), 1e-7)
}

func TestConformancePanics(t *testing.T) {
	nan := math.NaN()
	panics(t, "uncertainty: limits NaN to 1 are not numbers", func() { Normal{0, 1}.ConformanceProbability(Limits{nan, 1}) })
	panics(t, "uncertainty: limits 0 to NaN are not numbers", func() { Normal{0, 0}.ConformanceProbability(Limits{0, nan}) })
	for _, c := range []struct{ y, u, nu float64 }{
		{nan, 1, 5}, {math.Inf(1), 1, 5}, {0, -1, 5}, {0, nan, 5}, {0, math.Inf(1), 5}, {0, 1, 0}, {0, 1, -1}, {0, 1, nan},
	} {
		message := fmt.Sprintf("uncertainty: value %v with u = %v and %v degrees of freedom", c.y, c.u, c.nu)
		panics(t, message, func() { StudentT{c.y, c.u, c.nu}.ConformanceProbability(Limits{0, 1}) })
	}
}

// By definition: nothing lies below minus infinity, and all below plus infinity; so for
// what is too large to be squared.
func TestStudentCDFAtInfinity(t *testing.T) {
	for _, degrees := range []float64{1, 3, 999, nearlyNormal, 2123, 1e9, infinitely} {
		for _, at := range []float64{math.Inf(1), 1e200} {
			assert.Equal(t, 1.0, studentCDF(at, degrees), "%v", degrees)
			assert.InDelta(t, 0, studentCDF(-at, degrees), 1e-190, "%v", degrees)
		}
	}
}
