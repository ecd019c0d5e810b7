package uncertainty

import (
	"math"

	"minim/uncertainty/portable"
	"minim/uncertainty/random"
)

// Arcsine is the U-shaped distribution on [Low, High] of a quantity that swings
// as a sine does, at an unknown time (JCGM 101, 6.4.6).
type Arcsine struct{ Low, High float64 }

// summary has u = (High - Low)/√8 and the kurtosis 3/2.
func (d Arcsine) Summary() Summary {
	return Summary{Mean: portable.Middle(d.Low, d.High), StandardUncertainty: (d.High - d.Low) / math.Sqrt(8), Kurtosis: 1.5, Low: d.Low, High: d.High}
}

func (d Arcsine) Widened(factor float64) Distribution {
	low, high := wider(d.Low, d.High, factor)
	return Arcsine{low, high}
}

// quantile is Low + (High - Low) sin²(πp/2).
func (d Arcsine) quantile(p float64) float64 {
	return mirrored(d.Low, d.High, p, d.rise)
}

// rise is the distance of a quantile from the lower limit, for p <= 1/2.
func (d Arcsine) rise(p float64) float64 {
	sine := sineAt(math.Pi / 2 * p)
	return (d.High - d.Low) * sine * sine
}

func (d Arcsine) Sound() bool { return bounds(d.Low, d.High) }

// fill draws points in a quarter of a disk until one is inside; the square of
// the sine of its direction has the distribution (after von Neumann, Various
// techniques used in connection with random digits, 1951). A point outside is
// written all the same and then overwritten: that takes no branch.
func (d Arcsine) Fill(dst []float64, s *random.Source) {
	// In the last digit less than the width, so that no rounding passes High.
	width := math.Nextafter(d.High-d.Low, 0)
	state := s.State
	for i := 0; i < len(dst); {
		var bits uint64
		bits, state = random.Next(state)
		u, v := halves(bits)
		square := float64(u * u)
		radius := square + float64(v*v)
		dst[i] = d.Low + float64(width*(square/radius))
		if radius < 1 {
			i++
		}
	}
	s.State = state
}
