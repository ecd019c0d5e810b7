package uncertainty

import (
	"math"

	"minim/uncertainty/portable"
)

// Arcsine is the U-shaped distribution on [Low, High] of a quantity that swings
// as a sine does, at an unknown time (JCGM 101, 6.4.6).
type Arcsine struct{ Low, High float64 }

// Mean is the middle.
func (d Arcsine) Mean() float64 { return middle(d.Low, d.High) }

// StandardUncertainty is (High - Low)/√8.
func (d Arcsine) StandardUncertainty() float64 { return (d.High - d.Low) / math.Sqrt(8) }

// Variance is (High - Low)²/8.
func (d Arcsine) Variance() float64 { return (d.High - d.Low) * (d.High - d.Low) / 8 }

// Skewness is 0.
func (Arcsine) Skewness() float64 { return 0 }

// Kurtosis is 3/2.
func (Arcsine) Kurtosis() float64 { return 1.5 }

// Support is [Low, High].
func (d Arcsine) Support() (low, high float64) { return d.Low, d.High }

// Quantile is Low + (High - Low) sin²(πp/2).
func (d Arcsine) Quantile(p float64) float64 {
	return mirrored(d.Low, d.High, p, d.rise)
}

// rise is the distance of a quantile from the lower limit, for p <= 1/2.
func (d Arcsine) rise(p float64) float64 {
	sine := portable.Sin(math.Pi / 2 * p)
	return (d.High - d.Low) * sine * sine
}

func (d Arcsine) sound() bool { return bounds(d.Low, d.High) }

// fill draws points in a quarter of a disk until one is inside; the square of
// the sine of its direction has the distribution (after von Neumann, Various
// techniques used in connection with random digits, 1951). A point outside is
// written all the same and then overwritten: that takes no branch.
func (d Arcsine) fill(dst []float64, s *source) {
	// In the last digit less than the width, so that no rounding passes High.
	width := math.Nextafter(d.High-d.Low, 0)
	state := s.state
	for i := 0; i < len(dst); {
		var bits uint64
		bits, state = next(state)
		u, v := halves(bits)
		square := float64(u * u)
		radius := square + float64(v*v)
		dst[i] = d.Low + float64(width*(square/radius))
		if radius < 1 {
			i++
		}
	}
	s.state = state
}
