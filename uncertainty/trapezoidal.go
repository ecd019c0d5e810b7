package uncertainty

import "math"

// Trapezoidal is the symmetric trapezoidal distribution on [Low, High] (JCGM
// 101, 6.4.4). Beta is the width of its top over that of its base: 0 makes it
// triangular, 1 rectangular.
type Trapezoidal struct{ Low, High, Beta float64 }

// Mean is the middle.
func (d Trapezoidal) Mean() float64 { return middle(d.Low, d.High) }

// StandardUncertainty is (High - Low) √((1 + Beta²)/24).
func (d Trapezoidal) StandardUncertainty() float64 {
	return (d.High - d.Low) * math.Sqrt((1+float64(d.Beta*d.Beta))/24)
}

// Variance is (High - Low)² (1 + Beta²)/24.
func (d Trapezoidal) Variance() float64 {
	return (d.High - d.Low) * (d.High - d.Low) * (1 + float64(d.Beta*d.Beta)) / 24
}

// Skewness is 0.
func (Trapezoidal) Skewness() float64 { return 0 }

// Kurtosis is 3 - (3/5) (1 + 6 Beta² + Beta⁴)/(1 + Beta²)².
func (d Trapezoidal) Kurtosis() float64 {
	b := float64(d.Beta * d.Beta)
	return 3 - float64(0.6*(1+float64(6*b)+float64(b*b)))/((1+b)*(1+b))
}

// Support is [Low, High].
func (d Trapezoidal) Support() (low, high float64) { return d.Low, d.High }

// Quantile is the inverse of the distribution function.
func (d Trapezoidal) Quantile(p float64) float64 {
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

func (d Trapezoidal) sound() bool { return bounds(d.Low, d.High) && 0 <= d.Beta && d.Beta <= 1 }

// fill draws the sum of two uniform values, the widths of which are those of
// the half height and of one flank (JCGM 101, 6.4.4).
func (d Trapezoidal) fill(dst []float64, s *source) {
	flank := (d.High - d.Low) * ((1 - d.Beta) / 2)
	body := (d.High - d.Low) * ((1 + d.Beta) / 2)
	state := s.state
	for i := range dst {
		var bits uint64
		bits, state = next(state)
		u, v := halves(bits)
		dst[i] = d.Low + (float64(flank*u) + float64(body*v))
	}
	s.state = state
}
