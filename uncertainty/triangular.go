package uncertainty

import "math"

// Triangular is the symmetric triangular distribution on [Low, High]
// (JCGM 101, 6.4.5).
type Triangular struct{ Low, High float64 }

// Peaked is the triangular distribution of an error within ±limit.
func Peaked(limit float64) Triangular { return Triangular{-limit, limit} }

// Mean is the middle.
func (d Triangular) Mean() float64 { return middle(d.Low, d.High) }

// StandardUncertainty is (High - Low)/√24.
func (d Triangular) StandardUncertainty() float64 { return (d.High - d.Low) / math.Sqrt(24) }

// Variance is (High - Low)²/24.
func (d Triangular) Variance() float64 { return (d.High - d.Low) * (d.High - d.Low) / 24 }

// Skewness is 0.
func (Triangular) Skewness() float64 { return 0 }

// Kurtosis is 12/5.
func (Triangular) Kurtosis() float64 { return 2.4 }

// Support is [Low, High].
func (d Triangular) Support() (low, high float64) { return d.Low, d.High }

// Quantile is the inverse of the distribution function.
func (d Triangular) Quantile(p float64) float64 {
	width := d.High - d.Low
	if p < 0.5 {
		return d.Low + float64(width*math.Sqrt(p/2))
	}
	return d.High - float64(width*math.Sqrt((1-p)/2))
}

func (d Triangular) sound() bool { return bounds(d.Low, d.High) }

// fill draws the mean of two uniform values, which is triangular. They are the
// halves of one draw, so their resolution is 2^-32.
func (d Triangular) fill(dst []float64, s *source) {
	width := (d.High - d.Low) * 0x1p-33
	state := s.state
	for i := range dst {
		var bits uint64
		bits, state = next(state)
		sum := bits>>32 + bits&0xffffffff + 1
		dst[i] = d.Low + float64(width*float64(int64(sum)))
	}
	s.state = state
}
