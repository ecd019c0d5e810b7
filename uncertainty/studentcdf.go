package uncertainty

import (
	"math"

	"gonum.org/v1/gonum/mathext"
	"gonum.org/v1/gonum/stat/distuv"
)

// studentCDF is the distribution function of Student's t, and Φ for infinitely
// many degrees of freedom ν.
func studentCDF(t, degreesOfFreedom float64) float64 {
	if math.IsInf(degreesOfFreedom, 1) {
		return distuv.UnitNormal.CDF(t)
	}
	if math.Abs(t) > 1 {
		return distuv.StudentsT{Sigma: 1, Nu: degreesOfFreedom}.CDF(t)
	}
	// gonum rounds 1 - t²/(ν + t²), which costs half of the digits near 0. The
	// complement of its incomplete beta function, Abramowitz and Stegun, 26.5.2
	// and 26.7.1 (from memory; checked against the closed forms for few ν),
	// does not.
	square := float64(t * t)
	inside := mathext.RegIncBeta(0.5, degreesOfFreedom/2, square/(degreesOfFreedom+square))
	return 0.5 + math.Copysign(inside/2, t)
}

// studentQuantile is the quantile t_p(ν) of Student's t, and z_p for infinitely
// many degrees of freedom ν, to ten digits for 1e-6 <= p <= 1 - 1e-6 (gonum's
// inverse has fewer further out). It is infinite for hardly any ν.
func studentQuantile(p, degreesOfFreedom float64) float64 {
	switch {
	case p > 0.5:
		return -studentQuantile(1-p, degreesOfFreedom)
	case degreesOfFreedom < 0.001:
		return math.Inf(-1)
	case degreesOfFreedom < 1000:
		return distuv.StudentsT{Sigma: 1, Nu: degreesOfFreedom}.Quantile(p)
	}
	return nearlyNormalQuantile(distuv.UnitNormal.Quantile(p), degreesOfFreedom)
}

// nearlyNormalQuantile is the t quantile for many degrees of freedom ν, by its
// expansion in 1/ν about the normal quantile z (Abramowitz and Stegun, 26.7.5,
// from memory; checked against tables). gonum's inverse does not converge there
// for probabilities near 0 and 1.
func nearlyNormalQuantile(z, nu float64) float64 {
	z2 := z * z
	g1 := (z2 + 1) / 4
	g2 := ((5*z2+16)*z2 + 3) / 96
	g3 := (((3*z2+19)*z2+17)*z2 - 15) / 384
	return z * (1 + g1/nu + g2/nu/nu + g3/nu/nu/nu)
}
