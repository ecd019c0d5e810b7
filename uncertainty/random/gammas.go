package random

import (
	"math"

	"minim/uncertainty/portable"
)

// Gammas draws from the gamma distribution of the given shape and mean 1.
//
// For a shape from 1 up this is the method of Marsaglia and Tsang (A simple
// method for generating gamma variables, ACM TOMS 26, 2000): d (1 + t)³ with
// d = shape - 1/3 and t = z/√(9d), z normal, accepted with a certain chance.
func (s *Source) Gammas(dst []float64, shape float64) {
	if shape < 1 {
		s.Gammas(dst, shape+1)
		s.boost(dst, shape)
		return
	}
	s.Normals(dst, 0, 1)
	d := shape - 1.0/3
	c, scale := 1/(3*math.Sqrt(d)), d/shape
	state := s.State
	for i, z := range dst {
		for {
			var bits uint64
			bits, state = Next(state)
			u, t := Uniform(bits), float64(c*z)
			if u < squeeze(t, d) || portable.Log(u) < logAcceptance(t, d) {
				dst[i] = scale * ((1 + t) * (1 + t) * (1 + t))
				break
			}
			z, state = normal(state)
		}
	}
	s.State = state
}

// logAcceptance is the logarithm of the chance that t is accepted, NaN below
// -1. It is the z²/2 + d - dv + d ln v of the paper, v = (1 + t)³, in a form
// that does not cancel when the shape is large and t small.
func logAcceptance(t, d float64) float64 {
	return d * (float64(3*(portable.Log1p(t)-t)) + float64(t*t*(1.5-t)))
}

// squeeze is a lower bound of the chance that t is accepted. The paper has
// 1 - 0.0331 z⁴ = 1 - 2.6811 d² t⁴ for every d from 2/3 up. Being valid at 2/3,
// 1 - 2.6811 (2/3) d t⁴ is valid above it as well, and much closer: as a
// function of d it is straight, the chance exp(d h(t)) is convex, and both are
// 1 at d = 0, so that beyond a place where the line is lower it stays lower.
func squeeze(t, d float64) float64 {
	return 1 - float64(1.7874*d*(t*t)*(t*t))
}

// boost turns values of shape + 1 into values of shape (the same paper):
// u^(1/shape) times as much. They stay above zero, so that a Student t can be
// divided by them.
func (s *Source) boost(dst []float64, shape float64) {
	state := s.State
	for i, g := range dst {
		var bits uint64
		bits, state = Next(state)
		power := portable.Exp(portable.Log(Uniform(bits)) / shape)
		dst[i] = max(g*(shape+1)*power/shape, math.SmallestNonzeroFloat64)
	}
	s.State = state
}
