package portable

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
			near.Absolute(t, what, closed(x), StudentCDF(x, nu)-0.5, 2e-15)
			near.Absolute(t, what+" below", -closed(x), StudentCDF(-x, nu)-0.5, 2e-15)
		}
	}
}

// TestStudentCDFForManyReadings: Abramowitz and Stegun, 26.7.8, from memory:
// t(1 - 1/4ν)/√(1 + t²/2ν) is normal but for terms of 1/ν².
func TestStudentCDFForManyReadings(t *testing.T) {
	for _, nu := range []float64{1e4, 1e5, 1e6} {
		for _, x := range []float64{-6, -3, -1, -0.2, -1e-4, 0.5, 2} {
			normal := distuv.UnitNormal.CDF(x * (1 - 1/(4*nu)) / math.Sqrt(1+x*x/(2*nu)))
			near.Absolute(t, fmt.Sprintf("ν = %v, t = %v", nu, x), normal, StudentCDF(x, nu), 2e-10+0.1/(nu*nu))
		}
	}
}

// TestStudentQuantile goes there and back.
func TestStudentQuantile(t *testing.T) {
	for _, nu := range []float64{1, 2.5, 9, 200, 999, 1000, 5000, math.Inf(1)} {
		for _, p := range []float64{1e-6, 0.001, 0.05, 0.4, 0.5, 0.6, 0.95, 0.999} {
			q := StudentQuantile(p, nu)
			near.Relative(t, fmt.Sprintf("ν = %v, p = %v", nu, p), p, StudentCDF(q, nu), 1e-8)
		}
	}
}

// By definition: nothing lies below minus infinity, and all below plus infinity; so for
// what is too large to be squared.
func TestStudentCDFAtInfinity(t *testing.T) {
	for _, degrees := range []float64{1, 3, 999, nearlyNormal, 2123, 1e9, math.Inf(1)} {
		for _, at := range []float64{math.Inf(1), 1e200} {
			assert.Equal(t, 1.0, StudentCDF(at, degrees), "%v", degrees)
			assert.InDelta(t, 0, StudentCDF(-at, degrees), 1e-190, "%v", degrees)
		}
	}
}

// TestStudentBelow: the elementary forms beside the integral.
func TestStudentBelow(t *testing.T) {
	for _, nu := range []float64{1, 2, 3, 4, 7, 24, 40, 41, 2.5} {
		for x := -40.0; x < 40; x += 0.61 {
			near.Absolute(t, fmt.Sprintf("ν = %v below %v", nu, x), StudentCDF(x, nu), StudentBelow(x, nu), 3e-15)
		}
	}
}
