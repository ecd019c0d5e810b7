package portable

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/mathext"

	"minim/uncertainty/near"
)

// TestStudentHalves: against gonum's incomplete beta function, where it keeps its
// digits; both halves of the density add to ½.
func TestStudentHalves(t *testing.T) {
	for _, nu := range []float64{0.01, 0.3, 1, 2.5, 9, 30, 200, 999} {
		for _, x := range []float64{0.01, 0.5, 1, 1.4, 1.7, 3, 8, 50} {
			what := fmt.Sprintf("ν = %v, t = %v", nu, x)
			if x > 1 {
				beyond := mathext.RegIncBeta(nu/2, 0.5, nu/(nu+x*x)) / 2
				near.Absolute(t, what+" beyond", beyond, studentBeyond(x, nu), 1e-11*beyond+1e-16)
			}
			if x < 2 {
				within := mathext.RegIncBeta(0.5, nu/2, x*x/(nu+x*x)) / 2
				near.Absolute(t, what+" within", within, studentWithin(x, nu), 1e-11*within+1e-16)
			}
			if x > 1 && x < 2 {
				near.Relative(t, what+" both", 0.5, studentWithin(x, nu)+studentBeyond(x, nu), 4e-14)
			}
		}
	}
}

// TestWhereStudentIsNearlyNormal: there the expansion and the integral agree.
func TestWhereStudentIsNearlyNormal(t *testing.T) {
	for _, x := range []float64{1e-5, 0.3, 1, 1.4, 1.6, 3, 6, 10} {
		far := studentBeyond(x, nearlyNormal)
		if x < studentMiddle {
			far = 0.5 - studentWithin(x, nearlyNormal)
		}
		near.Absolute(t, fmt.Sprintf("t = %v", x), far, StudentCDF(-x, nearlyNormal), 1e-13*far+1e-16)
	}
	for _, p := range []float64{1e-6, 0.001, 0.025, 0.2, 0.45} {
		near.Relative(t, fmt.Sprintf("p = %v", p), fewReadingsQuantile(p, nearlyNormal), -StudentQuantile(p, nearlyNormal), 1e-9)
	}
}

// TestGammaRatio: against the gamma function, and at 0, where it is √π.
func TestGammaRatio(t *testing.T) {
	near.Relative(t, "0", math.Sqrt(math.Pi), gammaRatio(0), 4e-15)
	for _, a := range []float64{0.005, 0.5, 3, 15.9, 16, 16.1, 80} {
		near.Relative(t, fmt.Sprint(a), math.Gamma(a+0.5)/math.Gamma(a+1), gammaRatio(a), 4e-15)
	}
}

// TestStudentQuantileFarOut goes there and back where the chance is next to nothing,
// where there are hardly any degrees of freedom, and next to the middle.
func TestStudentQuantileFarOut(t *testing.T) {
	for _, nu := range []float64{0.05, 0.5, 1, 3, 40, 999} {
		for _, p := range []float64{1e-12, 1e-6, 0.01, 0.19999, 0.20001, 0.4} {
			q := fewReadingsQuantile(p, nu)
			near.Relative(t, fmt.Sprintf("ν = %v, p = %v", nu, p), p, chanceBeyond(q, nu), 4e-14)
		}
		p := 0.5 - 1e-9
		q := fewReadingsQuantile(p, nu)
		near.Relative(t, fmt.Sprintf("ν = %v, next to the middle", nu), 0.5-p, studentWithin(q, nu), 4e-14)
	}
}

func chanceBeyond(t, nu float64) float64 {
	if t < studentMiddle {
		return 0.5 - studentWithin(t, nu)
	}
	return studentBeyond(t, nu)
}
