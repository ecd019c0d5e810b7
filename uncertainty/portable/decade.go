package portable

import "math"

// Decade is the exponent e of the decade 10^e <= x < 10^(e+1) that a number above 0 lies
// in, exactly: 3 for 1000, 2 for the number before it. It panics where there is none.
func Decade(x float64) int {
	if !(x > 0) || math.IsInf(x, 1) {
		panic("portable: only a finite number above 0 lies in a decade")
	}
	_, exponent := math.Frexp(x)
	e := int(math.Floor(float64(exponent-1) * (math.Ln2 / math.Ln10)))
	for math.Pow10(e+1) <= x {
		e++
	}
	return e
}
