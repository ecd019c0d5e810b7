package sharp

import (
	"math"

	"minim/uncertainty/portable"
	"minim/uncertainty/statistics"
)

// Sums over trials of what the polynomials of a control leave of a and of a².
type Sums struct {
	N               float64 // trials
	rest, rest2     float64 // Σ (a - p(L)), and of its square
	square, square2 float64 // Σ (a² - q(L)), and of its square
}

// Sum adds up one block.
func (c *Control) Sum(values, linear []float64) Sums {
	s := Sums{N: float64(len(values))}
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

// Add adds those of other trials.
func (s *Sums) Add(b Sums) {
	s.N += b.N
	s.rest += b.rest
	s.rest2 += b.rest2
	s.square += b.square
	s.square2 += b.square2
}

// Mean of the output.
func (c *Control) Mean(s *Sums) statistics.Estimate {
	a := statistics.Squares{Sum: s.rest, Square: s.rest2}.Mean(s.N)
	return statistics.Estimate{Value: c.center + (c.p.expectation+a.Value)/c.scale, Err: a.Err / c.scale}
}

// Deviation is the standard deviation of the output, with n - 1 in the
// denominator where nothing is known of a but the trials.
func (c *Control) Deviation(s *Sums) statistics.Estimate {
	mean := c.p.expectation + s.rest/s.N
	square := statistics.Squares{Sum: s.square, Square: s.square2}.Mean(s.N)
	variance := c.q.expectation + square.Value - float64(mean*mean)
	if c.q == (polynomial{}) {
		variance *= s.N / (s.N - 1)
	}
	u := math.Sqrt(max(0, variance))
	if u == 0 {
		return statistics.Estimate{}
	}
	return statistics.Estimate{Value: u / c.scale, Err: square.Err / (2 * u * c.scale)}
}

// AreFinite reports whether all trials were numbers.
func (s *Sums) AreFinite() bool { return portable.IsFinite(s.rest) }
