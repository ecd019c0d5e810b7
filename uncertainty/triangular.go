package uncertainty

import (
	"math"

	"minim/uncertainty/portable"
	"minim/uncertainty/random"
)

// triangular is the symmetric triangular distribution on [low, high]
// (JCGM 101, 6.4.5).
type triangular struct{ low, high float64 }

// Peaked is the triangular distribution of an error within ±limit.
func Peaked(limit float64) Distribution { return triangular{-limit, limit} }

// summary has u = (high - low)/√24 and the kurtosis 12/5.
func (d triangular) summary() Summary {
	return Summary{Mean: portable.Middle(d.low, d.high), StandardUncertainty: (d.high - d.low) / math.Sqrt(24), Kurtosis: 2.4, Low: d.low, High: d.high}
}

func (d triangular) widened(factor float64) Distribution {
	low, high := wider(d.low, d.high, factor)
	return triangular{low, high}
}

func (d triangular) sound() bool { return bounds(d.low, d.high) }

// fill draws the mean of two uniform values, which is triangular. They are the
// halves of one draw, so their resolution is 2^-32.
func (d triangular) fill(dst []float64, s *random.Source) {
	width := (d.high - d.low) * 0x1p-33
	state := s.State
	for i := range dst {
		var bits uint64
		bits, state = random.Next(state)
		sum := bits>>32 + bits&0xffffffff + 1
		dst[i] = d.low + float64(width*float64(int64(sum)))
	}
	s.State = state
}
