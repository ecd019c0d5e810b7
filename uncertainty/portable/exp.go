package portable

import "math"

// ln 2 in two parts, the first short enough that its product with an exponent is
// exact (Cody and Waite, Software Manual for the Elementary Functions, 1980).
const (
	ln2High = 355.0 / 512
	ln2Low  = -2.121944400546905827679e-4
)

// expTerms are 1/2!, 1/3!, …: what follows 1 + x in the series of e^x, over x².
var expTerms = inverseFactorials(2, 1, 17)

// inverseFactorials are n of them, 1/first!, 1/(first+step)! and so on.
func inverseFactorials(first, step, n int) []float64 {
	list := make([]float64, n)
	factorial, k := 1.0, 1
	for i := range list {
		for ; k <= first+i*step; k++ {
			factorial *= float64(k) // exact up to 22!
		}
		list[i] = 1 / factorial
	}
	return list
}

// Exp is e^x: with k the whole number nearest to x/ln 2 it is 2^k e^(x - k ln 2), the
// last by its series.
func Exp(x float64) float64 {
	switch {
	case math.IsNaN(x) || x > 710:
		return x * math.Inf(1)
	case x < -746:
		return 0
	}
	k := math.Round(x * math.Log2E)
	high, low := x-float64(k*ln2High), float64(k*ln2Low)
	r := high - low
	lost := (high - r) - low
	return math.Ldexp(1+(r+(float64(r*r*Polynomial(r, expTerms...))+lost)), int(k))
}
