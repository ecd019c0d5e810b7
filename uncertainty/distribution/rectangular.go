package distribution

import (
	"math"

	"minim/uncertainty/portable"
	"minim/uncertainty/random"
)

// Rectangular is the uniform distribution on [Low, High] (JCGM 101, 6.4.2).
type Rectangular struct{ Low, High float64 }

// PlusMinus is the rectangular distribution of an error within ±limit.
func PlusMinus(limit float64) Rectangular { return Rectangular{-limit, limit} }

// Summary has u = (High - Low)/√12 and the kurtosis 9/5.
func (d Rectangular) Summary() Summary {
	return Summary{Mean: portable.Middle(d.Low, d.High), StandardUncertainty: (d.High - d.Low) / math.Sqrt(12), Kurtosis: 1.8, Low: d.Low, High: d.High}
}

func (d Rectangular) Widened(factor float64) Distribution {
	low, high := wider(d.Low, d.High, factor)
	return Rectangular{low, high}
}

func (d Rectangular) Sound() bool { return bounds(d.Low, d.High) }

func (d Rectangular) Fill(dst []float64, s *random.Source) {
	// In the last digit less than the width, so that no rounding passes High.
	width := math.Nextafter(d.High-d.Low, 0)
	state := s.State
	for i := range dst {
		var bits uint64
		bits, state = random.Next(state)
		dst[i] = d.Low + float64(width*random.Uniform(bits))
	}
	s.State = state
}
