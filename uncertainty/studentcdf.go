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
// inverse has fewer further out).
func studentQuantile(p, degreesOfFreedom float64) float64 {
	switch {
	case p > 0.5:
		return -studentQuantile(1-p, degreesOfFreedom)
	case degreesOfFreedom < 1000:
		return distuv.StudentsT{Sigma: 1, Nu: degreesOfFreedom}.Quantile(p)
	}
	return nearlyNormalFactor(distuv.UnitNormal.Quantile(p), degreesOfFreedom)
}
