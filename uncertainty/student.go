package uncertainty

import "math"

// StudentT is the scaled and shifted t-distribution that describes a quantity
// known from a few readings (JCGM 101, 6.4.9): Mu is their mean, Sigma the
// standard deviation that belongs to it, Nu = n - 1 the degrees of freedom.
type StudentT struct{ Mu, Sigma, Nu float64 }

// Mean is Mu.
func (d StudentT) Mean() float64 { return d.Mu }

// StandardUncertainty is Sigma: JCGM 100 takes the scale, and lets the degrees
// of freedom widen the coverage factor.
func (d StudentT) StandardUncertainty() float64 { return d.Sigma }

// Variance is Sigma² Nu/(Nu - 2), or +Inf for Nu <= 2.
func (d StudentT) Variance() float64 {
	if d.Nu <= 2 {
		return math.Inf(1)
	}
	return d.Sigma * d.Sigma * d.Nu / (d.Nu - 2)
}

// Skewness is 0, or NaN for Nu <= 3.
func (d StudentT) Skewness() float64 {
	if d.Nu <= 3 {
		return math.NaN()
	}
	return 0
}

// Kurtosis is 3 + 6/(Nu - 4), or +Inf for Nu <= 4.
func (d StudentT) Kurtosis() float64 {
	if d.Nu <= 4 {
		return math.Inf(1)
	}
	return 3 + 6/(d.Nu-4)
}

// Support is the whole line.
func (StudentT) Support() (low, high float64) { return math.Inf(-1), math.Inf(1) }

// Quantile is the inverse of the distribution function.
func (d StudentT) Quantile(p float64) float64 {
	return d.Mu + float64(d.Sigma*studentQuantile(p, d.Nu))
}

// sound takes half of Nu, since that is the shape of a gamma distribution.
func (d StudentT) sound() bool {
	return finite(d.Mu) && finite(d.Sigma) && d.Sigma >= 0 && finite(d.Nu) && d.Nu/2 > 0
}

// fill draws a normal value over the root of a chi-square value over its Nu
// degrees of freedom, which is twice a gamma value of shape Nu/2.
func (d StudentT) fill(dst []float64, s *source) {
	fillGamma(dst, d.Nu/2, s)
	state := s.state
	for i, g := range dst {
		var bits uint64
		bits, state = next(state)
		z, inside := ziggurat(bits)
		if !inside {
			z, state = outside(bits, state)
		}
		dst[i] = d.Mu + float64(d.Sigma*z/math.Sqrt(g))
	}
	s.state = state
}
