package portable

import (
	"math"
)

// StudentBelow is [StudentCDF] to about 1e-15, not of itself but of 1. For whole numbers of
// degrees of freedom up to 40 it is elementary: with θ = arctan(t/√ν), it is ½ + θ/π for ν = 1
// and ½ + ½ sin θ for ν = 2, to which for more are added terms in cos² θ
// (Abramowitz and Stegun, 26.7.3 and 26.7.4, from memory; checked against the integral).
func StudentBelow(t, nu float64) float64 {
	n := int(min(nu, 41))
	if float64(n) != nu || n > 40 || math.Abs(t) > 1e100 {
		return StudentCDF(t, nu)
	}
	x := t / math.Sqrt(nu)
	cos2 := 1 / (1 + float64(x*x))
	sin := x * math.Sqrt(cos2)
	if n%2 == 0 {
		term, sum := 1.0, 1.0
		for k := 2; k < n; k += 2 {
			term = float64(term * cos2 * (float64(k-1) / float64(k)))
			sum += term
		}
		return 0.5 + float64(sin*sum/2)
	}
	sum, term := 0.0, math.Sqrt(cos2)
	for k := 2; k < n; k += 2 {
		sum += term
		term = float64(term * cos2 * (float64(k) / float64(k+1)))
	}
	return 0.5 + (Atan(x)+float64(sin*sum))/math.Pi
}
