package portable

import "math"

// logTerms are 2/3, 2/5, 2/7, …: what follows 2s in the series of ln((1+s)/(1-s)),
// over s³.
var logTerms = func() []float64 {
	list := make([]float64, 10)
	for i := range list {
		list[i] = 2 / float64(2*i+3)
	}
	return list
}()

// Log is the natural logarithm, -Inf at 0 and NaN below. With x = 2^k m and m between
// √½ and √2 it is k ln 2 + ln m.
func Log(x float64) float64 {
	switch {
	case x == 0:
		return math.Inf(-1)
	case x < 0:
		return math.NaN()
	case math.IsNaN(x) || math.IsInf(x, 1):
		return x
	}
	m, exponent := math.Frexp(x)
	if m < math.Sqrt2/2 {
		m, exponent = 2*m, exponent-1
	}
	f, k := m-1, float64(exponent)
	return float64(k*ln2High) + (f - (logLack(f) - float64(k*ln2Low)))
}

// logLack is f - ln(1 + f) for -0.3 < f < 0.42. With s = f/(2 + f), so that 1 + f is
// (1 + s)/(1 - s) and 2s = f - s f, it is s (f - (2/3 s² + 2/5 s⁴ + …)).
func logLack(f float64) float64 {
	s := f / (2 + f)
	square := float64(s * s)
	return float64(s * (f - float64(square*Polynomial(square, logTerms...))))
}

// Log1p is ln(1 + x), -Inf at -1 and NaN below.
func Log1p(x float64) float64 {
	if -0.29 < x && x < 0.41 {
		return x - logLack(x)
	}
	u := 1 + x
	if u <= 0 || math.IsNaN(u) || math.IsInf(u, 1) {
		return Log(u)
	}
	// What 1 + x lost in rounding (Knuth, The Art of Computer Programming, 4.2.2).
	lost := (1 - (u - (u - 1))) + (x - (u - 1))
	return Log(u) + lost/u
}
