package uncertainty

import (
	"math"

	"minim/uncertainty/portable"
)

// Normal is the Gaussian distribution N(Mu, Sigma²) (JCGM 101, 6.4.7).
type Normal struct{ Mu, Sigma float64 }

// Mean is Mu.
func (d Normal) Mean() float64 { return d.Mu }

// StandardUncertainty is Sigma.
func (d Normal) StandardUncertainty() float64 { return d.Sigma }

// Variance is Sigma².
func (d Normal) Variance() float64 { return d.Sigma * d.Sigma }

// Skewness is 0.
func (Normal) Skewness() float64 { return 0 }

// Kurtosis is 3.
func (Normal) Kurtosis() float64 { return 3 }

// Support is the whole line.
func (Normal) Support() (low, high float64) { return math.Inf(-1), math.Inf(1) }

// Quantile is the inverse of the distribution function.
func (d Normal) Quantile(p float64) float64 {
	return d.Mu + float64(d.Sigma*portable.NormalQuantile(p))
}

func (d Normal) sound() bool { return finite(d.Mu) && finite(d.Sigma) && d.Sigma >= 0 }

func (d Normal) fill(dst []float64, s *source) {
	state := s.state
	for i := range dst {
		var bits uint64
		bits, state = next(state)
		z, inside := ziggurat(bits)
		if !inside {
			z, state = outside(bits, state)
		}
		dst[i] = d.Mu + float64(d.Sigma*z)
	}
	s.state = state
}
