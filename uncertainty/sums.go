package uncertainty

import "math"

// sums over trials of the deviation a of the output from its first-order value
// y, in units of scale, and of what remains of it when the linear part L of the
// model is taken away. The mean of L is 0 and its variance is known exactly, so
// that L serves as a control variate:
//
//	E[a] = E[a - L],  E[a²] = Var[L] + E[a² - L²]
//
// where the right sides scatter far less when the model is nearly linear.
type sums struct {
	n               float64
	a, a2, a3, a4   float64 // Σ a^k
	rest, rest2     float64 // Σ (a - L), Σ (a - L)²
	square, square2 float64 // Σ (a² - L²), Σ (a² - L²)²
}

// sumsOf adds up one block.
func sumsOf(values, linear []float64, y, scale float64) sums {
	s := sums{n: float64(len(values))}
	linear = linear[:len(values)]
	for i, v := range values {
		a := (v - y) * scale
		l := linear[i] * scale
		a2 := float64(a * a)
		rest := a - l
		square := float64(rest * (a + l))
		s.a += a
		s.a2 += a2
		s.a3 += float64(a2 * a)
		s.a4 += float64(a2 * a2)
		s.rest += rest
		s.rest2 += float64(rest * rest)
		s.square += square
		s.square2 += float64(square * square)
	}
	return s
}

func (s *sums) add(b sums) {
	s.n += b.n
	s.a += b.a
	s.a2 += b.a2
	s.a3 += b.a3
	s.a4 += b.a4
	s.rest += b.rest
	s.rest2 += b.rest2
	s.square += b.square
	s.square2 += b.square2
}

// estimate of a moment with its standard error.
type estimate struct{ value, err float64 }

// average of n values with the sum and the sum of squares given.
func (s *sums) average(sum, squares float64) estimate {
	mean := sum / s.n
	return estimate{mean, math.Sqrt(max(0, squares/s.n-float64(mean*mean)) / s.n)}
}

// mean of a, by whichever way scatters less.
func (s *sums) mean() estimate {
	plain, controlled := s.average(s.a, s.a2), s.average(s.rest, s.rest2)
	if controlled.err < plain.err {
		return controlled
	}
	return plain
}

// deviation is the standard deviation of a, given the variance of L, by
// whichever way scatters less.
func (s *sums) deviation(linearVariance float64) estimate {
	mean := s.a / s.n
	m2 := s.a2/s.n - mean*mean
	m4 := s.a4/s.n - 4*mean*s.a3/s.n + 6*mean*mean*s.a2/s.n - 3*mean*mean*mean*mean
	variance := estimate{max(0, m2) * s.n / (s.n - 1), math.Sqrt(max(0, m4-m2*m2) / s.n)}
	square := s.average(s.square, s.square2)
	shift := s.mean().value
	if total := linearVariance + square.value - float64(shift*shift); square.err < variance.err && total >= 0 {
		variance = estimate{total, square.err}
	}
	u := math.Sqrt(variance.value)
	if u == 0 {
		return estimate{}
	}
	return estimate{u, variance.err / (2 * u)}
}
