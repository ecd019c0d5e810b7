package distribution

import (
	"math"

	"minim/uncertainty/portable"
	"minim/uncertainty/random"
)

// Triangular is the symmetric triangular distribution on [Low, High]
// (JCGM 101, 6.4.5).
type Triangular struct{ Low, High float64 }

// Peaked is the triangular distribution of an error within ±limit.
func Peaked(limit float64) Distribution { return Triangular{-limit, limit} }

// Summary has u = (High - Low)/√24 and the kurtosis 12/5.
func (d Triangular) Summary() Summary {
	return Summary{Mean: portable.Middle(d.Low, d.High), StandardUncertainty: (d.High - d.Low) / math.Sqrt(24), Kurtosis: 2.4, Low: d.Low, High: d.High}
}

func (d Triangular) Widened(factor float64) Distribution {
	low, high := wider(d.Low, d.High, factor)
	return Triangular{low, high}
}

func (d Triangular) Sound() bool { return bounds(d.Low, d.High) }

// Fill draws the mean of two uniform values, which is triangular. They are the
// halves of one draw, so their resolution is 2^-32.
func (d Triangular) Fill(dst []float64, s *random.Source) {
	width := (d.High - d.Low) * 0x1p-33
	state := s.State
	for i := range dst {
		var bits uint64
		bits, state = random.Next(state)
		sum := bits>>32 + bits&0xffffffff + 1
		dst[i] = d.Low + float64(width*float64(int64(sum)))
	}
	s.State = state
}
