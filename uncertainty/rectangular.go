package uncertainty

import "math"

// Rectangular is the uniform distribution on [Low, High] (JCGM 101, 6.4.2).
type Rectangular struct{ Low, High float64 }

// PlusMinus is the rectangular distribution of an error within ±limit.
func PlusMinus(limit float64) Rectangular { return Rectangular{-limit, limit} }

// Mean is the middle.
func (d Rectangular) Mean() float64 { return middle(d.Low, d.High) }

// StandardUncertainty is (High - Low)/√12.
func (d Rectangular) StandardUncertainty() float64 { return (d.High - d.Low) / math.Sqrt(12) }

// Variance is (High - Low)²/12.
func (d Rectangular) Variance() float64 { return (d.High - d.Low) * (d.High - d.Low) / 12 }

// Skewness is 0.
func (Rectangular) Skewness() float64 { return 0 }

// Kurtosis is 9/5.
func (Rectangular) Kurtosis() float64 { return 1.8 }

// Support is [Low, High].
func (d Rectangular) Support() (low, high float64) { return d.Low, d.High }

// Quantile is Low + p(High - Low).
func (d Rectangular) Quantile(p float64) float64 { return d.Low + float64(p*(d.High-d.Low)) }

func (d Rectangular) sound() bool { return bounds(d.Low, d.High) }

// bounds reports whether [low, high] is an interval, be it of zero width.
func bounds(low, high float64) bool { return low <= high && finite(high-low) }

func (d Rectangular) fill(dst []float64, s *source) {
	// In the last digit less than the width, so that no rounding passes High.
	width := math.Nextafter(d.High-d.Low, 0)
	state := s.state
	for i := range dst {
		var bits uint64
		bits, state = next(state)
		dst[i] = d.Low + float64(width*uniform(bits))
	}
	s.state = state
}
