package sharp

import (
	"math"

	"minim/uncertainty/portable"
)

// far is a logarithm that no quotient of numbers has.
const far = 1e6

// linearOf is where L is when the output is q, were it L alone.
func (s *Sharpening) linearOf(q float64) float64 {
	switch {
	case !s.Linear.Log:
		return q - s.Y
	case !(q > 0):
		return -far
	}
	return max(-far, min(portable.Log(q/s.Y), far))
}

// linearBelow is F_L, for the output.
func (s *Sharpening) linearBelow(q float64) float64 { return s.Linear.Law.Below(s.linearOf(q)) }

// linearAt is its inverse, but for a shift where L is not that of a logarithm.
func (s *Sharpening) linearAt(p float64) float64 {
	if s.Linear.Log {
		return s.Y * portable.Exp(s.Linear.Law.At(p))
	}
	return s.Linear.Law.At(p)
}

// size of the output: that of L, in units of the output.
func (s *Sharpening) size() float64 {
	if s.Linear.Log {
		return s.Linear.Scale * s.Y
	}
	return s.Linear.Scale
}

// power that the output is raised to, 0 where it is taken as it is.
func (s *Sharpening) power() float64 {
	if s.Raised {
		return s.bend()
	}
	return 0
}

// raised is the output to the power, with the sign that makes it rise with the output.
func (s *Sharpening) raised(c, power float64) float64 {
	x := portable.Exp(power * portable.Log(max(c, math.SmallestNonzeroFloat64)/s.Y))
	if power < 0 {
		return -x
	}
	return x
}

// raise does so to some outputs, of which often many are the same.
func (s *Sharpening) raise(dst, c []float64) {
	power := s.power()
	for i, x := range c {
		switch {
		case !(x > 0):
			dst[i] = math.NaN()
		case i > 0 && x == c[i-1]:
			dst[i] = dst[i-1]
		default:
			dst[i] = s.raised(x, power)
		}
	}
}
