package random

import "math"

// Normals draws from the normal distribution N(mu, sigma²).
func (s *Source) Normals(dst []float64, mu, sigma float64) {
	state := s.State
	for i := range dst {
		var bits uint64
		bits, state = Next(state)
		z, inside := ziggurat(bits)
		if !inside {
			z, state = outside(bits, state)
		}
		dst[i] = mu + float64(sigma*z)
	}
	s.State = state
}

// Students draws mu and sigma times Student's t with nu degrees of freedom: a normal
// value over the root of a chi-square value over nu, which is twice a gamma value of
// shape nu/2.
func (s *Source) Students(dst []float64, mu, sigma, nu float64) {
	s.Gammas(dst, nu/2)
	state := s.State
	for i, g := range dst {
		var bits uint64
		bits, state = Next(state)
		z, inside := ziggurat(bits)
		if !inside {
			z, state = outside(bits, state)
		}
		dst[i] = mu + float64(sigma*z/math.Sqrt(g))
	}
	s.State = state
}
