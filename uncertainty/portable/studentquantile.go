package portable

import (
	"math"
)

// StudentQuantile is the quantile t_p(ν) of Student's t, and z_p for infinitely
// many degrees of freedom ν. It is infinite for hardly any ν.
func StudentQuantile(p, degreesOfFreedom float64) float64 {
	switch {
	case p > 0.5:
		return -StudentQuantile(1-p, degreesOfFreedom)
	case p == 0 || degreesOfFreedom < 0.001:
		return math.Inf(-1)
	case p == 0.5:
		return 0
	case degreesOfFreedom < nearlyNormal:
		return -fewReadingsQuantile(p, degreesOfFreedom)
	}
	return nearlyNormalQuantile(NormalQuantile(p), degreesOfFreedom)
}

// nearlyNormalQuantile is the t quantile for many degrees of freedom ν, by its
// expansion in 1/ν about the normal quantile z (Abramowitz and Stegun, 26.7.5,
// from memory; checked against tables).
func nearlyNormalQuantile(z, nu float64) float64 {
	z2 := float64(z * z)
	g1 := Polynomial(z2, 1, 1) / 4
	g2 := Polynomial(z2, 3, 16, 5) / 96
	g3 := Polynomial(z2, -15, 17, 19, 3) / 384
	return z * (1 + g1/nu + g2/nu/nu + g3/nu/nu/nu)
}

// fewReadingsQuantile is the t beyond which the chance is p < ½, by Newton's steps
// for ln t. The density of ln t is log-concave (its logarithm has the slope
// 1 - (ν + 1) t²/(ν + t²), which falls), and so are the logarithms of both chances
// as functions of ln t: steps from a t that is too small never pass the root of
// the rising one, and pass that of the falling one once and then come back to it.
// The normal quantile is too small.
func fewReadingsQuantile(p, nu float64) float64 {
	t := -NormalQuantile(p)
	if p > studentBeyond(studentMiddle, nu) {
		return newton(t, func(t float64) float64 {
			within := studentWithin(t, nu)
			return Log((0.5-p)/within) * within / studentSlope(t, nu)
		})
	}
	return newton(max(t, studentMiddle), func(t float64) float64 {
		beyond := studentBeyond(t, nu)
		return Log(beyond/p) * beyond / studentSlope(t, nu)
	})
}

// studentSlope is t times the density of Student's t at t: the derivative of the
// chances with respect to ln t.
func studentSlope(t, nu float64) float64 {
	return nu / 2 * studentEdge(t/math.Sqrt(nu), nu)
}

// newton multiplies t by e to the power of steps until they are next to nothing, or t
// is no longer finite.
func newton(t float64, step func(t float64) float64) float64 {
	for range 100 {
		by := step(t)
		t *= Exp(by)
		if !(math.Abs(by) > 1e-15) || math.IsInf(t, 1) {
			break
		}
	}
	return t
}
