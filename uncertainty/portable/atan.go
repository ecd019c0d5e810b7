package portable

import "math"

// arctangentTerms are those of the series of atan(x)/x in x², which is Gregory's.
var arctangentTerms = alternating(inverseOdd(16), 1)

func inverseOdd(n int) []float64 {
	list := make([]float64, n)
	for i := range list {
		list[i] = 1 / float64(2*i+1)
	}
	return list
}

// The tangents of π/16 and 3π/16, between which the angle π/8 is the nearest of 0, π/8 and π/4.
const (
	tangent1  = 0.19891236737965800
	tangent3  = 0.66817863791929892
	tangent2  = 0.41421356237309505
	eighthPi  = 0.39269908169872414
	quarterPi = 0.78539816339744828
)

// Atan is the angle whose tangent is x, within two units of the last place: the nearest multiple of
// π/8 and the angle that is left, whose tangent is less than a fifth, by its series.
func Atan(x float64) float64 {
	a := math.Abs(x)
	inverse := a > 1
	if inverse {
		a = 1 / a
	}
	base := 0.0
	switch {
	case a > tangent3:
		base, a = quarterPi, (a-1)/(1+a)
	case a > tangent1:
		base, a = eighthPi, (a-tangent2)/(1+float64(a*tangent2))
	}
	angle := base + float64(a*Polynomial(float64(a*a), arctangentTerms...))
	if inverse {
		angle = math.Pi/2 - angle
	}
	return math.Copysign(angle, x)
}
