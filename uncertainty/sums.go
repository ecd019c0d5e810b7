package uncertainty

import "math"

// sums over trials of what the polynomials of a control leave of a and of a².
type sums struct {
	n               float64
	rest, rest2     float64 // Σ (a - p(L)), and of its square
	square, square2 float64 // Σ (a² - q(L)), and of its square
}

// sum adds up one block.
func (c *control) sum(values, linear []float64) sums {
	s := sums{n: float64(len(values))}
	linear = linear[:len(values)]
	for i, v := range values {
		a := float64((v - c.center) * c.scale)
		l := float64(linear[i] * c.linearScale)
		rest := a - c.p.at(l)
		square := float64(a*a) - c.q.at(l)
		s.rest += rest
		s.rest2 += float64(rest * rest)
		s.square += square
		s.square2 += float64(square * square)
	}
	return s
}

func (s *sums) add(b sums) {
	s.n += b.n
	s.rest += b.rest
	s.rest2 += b.rest2
	s.square += b.square
	s.square2 += b.square2
}

// estimate of a moment with its standard error.
type estimate struct{ value, err float64 }

// average of n values with the sum and the sum of squares given.
func average(n, sum, squares float64) estimate {
	mean := sum / n
	return estimate{mean, math.Sqrt(max(0, squares/n-float64(mean*mean)) / n)}
}

// mean of the output.
func (c *control) mean(s *sums) estimate {
	a := average(s.n, s.rest, s.rest2)
	return estimate{c.center + (c.p.expectation+a.value)/c.scale, a.err / c.scale}
}

// deviation is the standard deviation of the output, with n - 1 in the
// denominator where nothing is known of a but the trials.
func (c *control) deviation(s *sums) estimate {
	mean := c.p.expectation + s.rest/s.n
	square := average(s.n, s.square, s.square2)
	variance := c.q.expectation + square.value - float64(mean*mean)
	if c.q == (polynomial{}) {
		variance *= s.n / (s.n - 1)
	}
	u := math.Sqrt(max(0, variance))
	if u == 0 {
		return estimate{}
	}
	return estimate{u / c.scale, square.err / (2 * u * c.scale)}
}
