package portable

import (
	"math"
)

// StudentCDF is the distribution function of Student's t, and Φ for infinitely
// many degrees of freedom ν.
func StudentCDF(t, degreesOfFreedom float64) float64 {
	switch {
	case degreesOfFreedom >= nearlyNormal:
		return NormalCDF(asNormal(t, degreesOfFreedom))
	case math.Abs(t) < studentMiddle:
		return 0.5 + math.Copysign(studentWithin(math.Abs(t), degreesOfFreedom), t)
	case t < 0:
		return studentBeyond(-t, degreesOfFreedom)
	}
	return 1 - studentBeyond(t, degreesOfFreedom)
}

// nearlyNormal is from how many degrees of freedom the expansions about the normal
// distribution hold: to 1e-13 in the probability.
const nearlyNormal = 1000

// asNormal is the z for which Φ(z) is the distribution function at t (Hill,
// Algorithm 395: Student's t-distribution, CACM 13, 1970, from memory; checked
// against the integral where it begins).
func asNormal(t, degreesOfFreedom float64) float64 {
	if math.IsInf(degreesOfFreedom, 1) || math.IsInf(t*t, 1) {
		return t
	}
	a := degreesOfFreedom - 0.5
	b := float64(48 * a * a)
	y := float64(a * Log1p(t*t/degreesOfFreedom))
	fourth := Polynomial(y, -85.5, -24, -3.3, -0.4)
	second := fourth/Polynomial(y, 100+b, 0, 0.8) + (y + 3)
	return math.Copysign((second/b+1)*math.Sqrt(y), t)
}

// StudentBetween is the chance that Student's t lies between two places. The difference is taken in the
// tail that is the smaller, which keeps its digits.
func StudentBetween(low, high, degreesOfFreedom float64) float64 {
	below := func(t float64) float64 { return StudentCDF(t, degreesOfFreedom) }
	if math.IsInf(low, -1) || high < 0 {
		return max(0, below(high)-below(low))
	}
	return max(0, below(-low)-below(-high))
}
