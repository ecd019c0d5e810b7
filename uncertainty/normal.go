package uncertainty

import "math"

// Normal is the Gaussian distribution N(Mu, Sigma²) (JCGM 101, 6.4.7).
type Normal struct{ Mu, Sigma float64 }

func (d Normal) summary() Summary {
	return Summary{Mean: d.Mu, StandardUncertainty: d.Sigma, Kurtosis: 3, Low: math.Inf(-1), High: math.Inf(1)}
}

func (d Normal) widened(factor float64) Distribution { return Normal{d.Mu, d.Sigma * factor} }

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
