package uncertainty

import (
	"math"

	"minim/uncertainty/portable"
	"minim/uncertainty/random"
)

// Trapezoidal is the symmetric trapezoidal distribution on [Low, High] (JCGM
// 101, 6.4.4). Beta is the width of its top over that of its base: 0 makes it
// distribution.Triangular, 1 rectangular.
type Trapezoidal struct{ Low, High, Beta float64 }

// summary has u = (High - Low) √((1 + Beta²)/24) and the kurtosis
// 3 - (3/5) (1 + 6 Beta² + Beta⁴)/(1 + Beta²)².
func (d Trapezoidal) Summary() Summary {
	b := float64(d.Beta * d.Beta)
	return Summary{
		Mean: portable.Middle(d.Low, d.High), StandardUncertainty: (d.High - d.Low) * math.Sqrt((1+b)/24),
		Kurtosis: 3 - float64(0.6*(1+float64(6*b)+float64(b*b)))/((1+b)*(1+b)), Low: d.Low, High: d.High,
	}
}

func (d Trapezoidal) Widened(factor float64) Distribution {
	low, high := wider(d.Low, d.High, factor)
	return Trapezoidal{low, high, d.Beta}
}

// quantile is the inverse of the distribution function.
func (d Trapezoidal) quantile(p float64) float64 {
	return mirrored(d.Low, d.High, p, d.rise)
}

// rise is the distance of a quantile from the lower limit, for p <= 1/2.
func (d Trapezoidal) rise(p float64) float64 {
	half := (d.High - d.Low) / 2
	if 2*p*(1+d.Beta) < 1-d.Beta { // on the flank
		return half * math.Sqrt(2*p*(1-d.Beta)*(1+d.Beta))
	}
	return half * (1 - float64((1-float64(2*p))*(1+d.Beta)/2))
}

func (d Trapezoidal) Sound() bool { return bounds(d.Low, d.High) && 0 <= d.Beta && d.Beta <= 1 }

// fill draws the sum of two uniform values, the widths of which are those of
// the half height and of one flank (JCGM 101, 6.4.4).
func (d Trapezoidal) Fill(dst []float64, s *random.Source) {
	flank := (d.High - d.Low) * ((1 - d.Beta) / 2)
	body := (d.High - d.Low) * ((1 + d.Beta) / 2)
	state := s.State
	for i := range dst {
		var bits uint64
		bits, state = random.Next(state)
		u, v := halves(bits)
		dst[i] = d.Low + (float64(flank*u) + float64(body*v))
	}
	s.State = state
}
