package uncertainty

import (
	"math"

	"minim/uncertainty/law"
)

// sharpening makes the distribution function F of an output c from few trials. Of its linear part
// L the function F_L is known, and one influence x1, the smooth one, is integrated exactly: given
// all others, c is a quotient of two straight lines in x1, so that c <= q and L <= q are
// x1 <= x_c(q) and x1 <= x_L(q), whose chances A and B follow from the distribution function of x1:
//
//	F(q) = w F_L(q) + mean of A - w B
//
// It is unbiased for any w that is fixed before the trials, and for any L whose law is exact, were
// its slopes wrong. Where the model is nearly linear A - B is small.
type sharpening struct {
	linear *linearPart
	y      float64 // the output at the means of the influences
	// influence is the number of x1, and node its node.
	influence int
	node      Node
	// mean of x1, and the size that its kernel is in units of.
	mean, size float64
	kernel     law.Kernel
	scaled     bool // x1 is drawn with a scale
	// sign of the slope of x1. Where c is straight in x1 it may be another in a trial. Where c is
	// not exactly straight, or a quotient of two straight lines, the trials tell the difference.
	sign            float64
	straight, exact bool
	// tail is how much lies beyond each end of the interval.
	tail float64
	// q are the places at which F is worked out as the trials go on, weight what L counts at
	// the lower and at the upper end.
	q      []float64
	weight [2]float64
}

// at is x1 at its points.
func (s *sharpening) at() [points]operand {
	return [points]operand{{-1, s.mean - s.size}, {-1, s.mean}, {-1, s.mean + s.size}}
}

// slope of L in units of the size of x1.
func (s *sharpening) slope() float64 { return float64(s.linear.slopes[s.influence] * s.size) }

// own is the part of L that x1 belongs to.
func (s *sharpening) own() int { return s.linear.part[s.influence] }

// smoothInfluence describes an influence as the smooth one; false where it cannot be.
func (m *Model) smoothInfluence(s *sharpening, i int, cut float64) bool {
	about := m.influences[i].Distribution.summary()
	s.influence, s.node = i, m.known[m.influences[i].Identity()]
	s.mean, s.size = about.Mean, about.StandardUncertainty
	s.sign = math.Copysign(1, s.linear.slopes[i])
	switch d := m.influences[i].Distribution.(type) {
	case Normal:
		s.kernel = law.Bell()
	case StudentT:
		if m.scaleOf[i] < 0 && cut == 0 {
			return false // it is not drawn as one that is scaled
		}
		s.kernel, s.scaled = law.Bell(), true
		s.kernel.Cut, s.kernel.Reach = cut/d.Sigma, 1e9
		if cut > 0 {
			s.kernel.Reach = s.kernel.Cut
		}
	case Rectangular:
		s.size = float64((d.High - d.Low) / 2)
		s.kernel = law.Flat()
	case triangular:
		s.size = float64((d.high - d.low) / 2)
		s.kernel = law.Peaked()
	case Tabulated:
		below := d.below()
		mean, size := s.mean, s.size
		s.kernel = law.Known(max(mean-about.Low, about.High-mean)/size, func(t float64) float64 { return below(mean + float64(size*t)) })
	case Gamma:
		if d.shape() > narrow || d.shape() < leastShape {
			return false
		}
		far := d.Mu + float64(d.Sigma*max(12, 40*d.Sigma/d.Mu))
		s.kernel = law.Tabled(s.mean, s.size, far, d.steepness(), func(x float64) float64 { return 1 - d.Above(x) })
	case gammaBelow:
		if d.shape() < leastShape {
			return false
		}
		s.kernel = law.Tabled(s.mean, s.size, d.most, d.steepness(), d.below())
	default:
		return false
	}
	return s.size > 0 && !m.isCorrelated(i)
}

// leastShape is that of a gamma distribution which can still be tabulated.
const leastShape = 0.3

// steepness is the power that takes out how the distribution function begins at 0, and more.
func (d Gamma) steepness() int { return max(3, int(math.Ceil(3/d.shape()))) }

// weightAt is what L counts where F_L is f: between the ends it changes evenly.
func (s *sharpening) weightAt(f float64) float64 {
	part := max(0, min((f-s.tail)/(1-float64(2*s.tail)), 1))
	return s.weight[0] + float64(part*(s.weight[1]-s.weight[0]))
}

// linearBelow is F_L, for the output.
func (s *sharpening) linearBelow(q float64) float64 { return s.linear.law.Below(q - s.y) }
