package portable

import (
	"math"
)

// studentWithin is the chance that Student's t lies between 0 and t, and
// studentBeyond that it lies beyond t, for t >= 0:
//
//	½ I_y(½, ν/2)  and  ½ I_x(ν/2, ½),  x = ν/(ν + t²),  y = 1 - x
//
// (Abramowitz and Stegun, 26.5.2 and 26.7.1, from memory; checked against the
// closed forms for few ν). Below studentMiddle the first keeps its digits, above
// it the second.
func studentWithin(t, nu float64) float64 {
	a, q := nu/2, t/math.Sqrt(nu)
	y := q * q / (1 + float64(q*q))
	return a * studentEdge(q, nu) * betaFraction(0.5, a, y)
}

// studentMiddle is where both halves converge well, for any ν.
const studentMiddle = 1.25

func studentBeyond(t, nu float64) float64 {
	q := t / math.Sqrt(nu)
	return studentEdge(q, nu) / 2 * betaFraction(nu/2, 0.5, 1/(1+float64(q*q)))
}

// studentEdge is x^a √y/(a B(a, ½)) for q = t/√ν and a = ν/2, where x is 1/(1 + q²).
func studentEdge(q, nu float64) float64 {
	power := Exp(-nu / 2 * Log1p(q*q))
	if q > 1e150 { // where its square is infinite
		power = Exp(-nu * Log(q))
	}
	return power / Hypot(1, 1/q) * gammaRatio(nu/2) / math.Sqrt(math.Pi)
}

// betaFraction is the continued fraction F of the incomplete beta function
//
//	I_x(a, b) = x^a (1-x)^b/(a B(a, b)) F
//
// (NIST Digital Library of Mathematical Functions, 8.17.22, from memory), from
// its beginning on by the method of Lentz (Applied Optics 15, 1976).
func betaFraction(a, b, x float64) float64 {
	f, above, below := 1.0, 1.0, 0.0
	for k := 1; k < 10_000; k++ {
		d := betaTerm(a, b, x, k)
		above = 1 + d/above
		below = 1 / (1 + float64(d*below))
		step := float64(above * below)
		f *= step
		if math.Abs(step-1) < 0x1p-53 {
			break
		}
	}
	return 1 / f
}

// betaTerm is the numerator of number k in 1/(1 + d1/(1 + d2/(1 + …))).
func betaTerm(a, b, x float64, k int) float64 {
	m := float64(k / 2)
	if k%2 == 0 {
		return m * (b - m) * x / ((a + float64(2*m) - 1) * (a + float64(2*m)))
	}
	return -(a + m) * (a + b + m) * x / ((a + float64(2*m)) * (a + float64(2*m) + 1))
}

// gammaRatio is Γ(a + ½)/Γ(a + 1), by its asymptotic series in N = a + ¼, which
// has even powers only (from memory; checked against the gamma function), at an
// a that is large enough, and Γ(x + 1) = x Γ(x) below.
func gammaRatio(a float64) float64 {
	above, below := 1.0, 1.0
	for ; a < 16; a++ {
		above *= a + 1
		below *= a + 0.5
	}
	n := a + 0.25
	s := 1 / float64(n*n)
	series := Polynomial(s, 1, -1.0/64, 21.0/8192, -671.0/524288, 180323.0/134217728)
	return above / below * series / math.Sqrt(n)
}
