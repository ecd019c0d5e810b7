package statistics

import "math"

// Estimate is a value with its standard error.
type Estimate struct{ Value, Err float64 }

// Squares are a sum and a sum of squares.
type Squares struct{ Sum, Square float64 }

// Take adds one value.
func (s *Squares) Take(x float64) {
	s.Sum += x
	s.Square += float64(x * x)
}

// Add adds another sum.
func (s *Squares) Add(b Squares) {
	s.Sum += b.Sum
	s.Square += b.Square
}

// Mean of n values.
func (s Squares) Mean(n float64) Estimate {
	mean := s.Sum / n
	return Estimate{mean, math.Sqrt(max(0, s.Square/n-float64(mean*mean)) / n)}
}
