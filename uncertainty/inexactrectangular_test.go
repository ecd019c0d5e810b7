package uncertainty

import (
	"math"

	"minim/uncertainty/portable"
	"minim/uncertainty/random"
)

// InexactRectangular is a rectangular distribution whose limits are not exactly
// known: they are Low and High within ±D, and the middle is known. Its density
// is a trapezoid with curved flanks (JCGM 101, 6.4.3, CTrap).
type InexactRectangular struct{ Low, High, D float64 }

// summary has u = √((High - Low)²/12 + D²/9) and the kurtosis
// (9/5) (1 + 2r² + r⁴/5)/(1 + r²/3)², r being D over half of the width.
func (d InexactRectangular) Summary() Summary {
	s := Summary{
		Mean: portable.Middle(d.Low, d.High), StandardUncertainty: portable.Hypot((d.High-d.Low)/math.Sqrt(12), d.D/3),
		Kurtosis: 1.8, Low: d.Low - d.D, High: d.High + d.D,
	}
	if d.D != 0 {
		r := 2 * d.D / (d.High - d.Low)
		r = float64(r * r)
		s.Kurtosis = 1.8 * (1 + float64(2*r) + r*r/5) / ((1 + r/3) * (1 + r/3))
	}
	return s
}

func (d InexactRectangular) Widened(factor float64) Distribution {
	low, high := wider(d.Low, d.High, factor)
	return InexactRectangular{low, high, d.D * factor}
}

// quantile is the inverse of the distribution function.
func (d InexactRectangular) quantile(p float64) float64 {
	low, high := d.Low-d.D, d.High+d.D
	return mirrored(low, high, p, d.rise)
}

// rise is the distance of a quantile from the lower limit, for p <= 1/2.
//
// With w half of the width, B = w + D and y the distance from the middle, the
// density is ln(B/max(y, w - D))/(4D). Integrated from B inwards over a flank
// it gives 4Dp = B - y - y ln(B/y), which is B times (1 - (1 + L) exp(-L)) for
// y = B exp(-L).
func (d InexactRectangular) rise(p float64) float64 {
	w := float64((d.High - d.Low) / 2)
	if d.D == 0 {
		return 2 * w * p
	}
	top, outer := w-d.D, w+d.D
	within := 0.0 // the probability of the flat top
	if top > 0 {
		within = top * portable.Log1p(2*d.D/top) / (2 * d.D)
	}
	if 1-2*p > within {
		return outer * -math.Expm1(-depth(4*d.D*p/outer))
	}
	if top == 0 {
		return outer
	}
	return outer - top*(1-2*p)/within
}

// depth solves 1 - (1 + L) exp(-L) = c for L, at 0 <= c < 1.
func depth(c float64) float64 {
	m := -portable.Log1p(-c) // L - ln(1 + L) = m
	t := math.Sqrt(2 * m)
	if t < 1e-5 {
		return t + t*t/3 // the next term is t³/36
	}
	// From this upper bound, since exp(t) >= 1 + t + t²/2, Newton's steps lead
	// down only.
	for l := t + m; ; {
		lower := l - (l-portable.Log1p(l)-m)*(1+l)/l
		if !(lower < l) {
			return l
		}
		l = lower
	}
}

func (d InexactRectangular) Sound() bool {
	low, high := d.Low-d.D, d.High+d.D
	return bounds(d.Low, d.High) && bounds(low, high) && 0 <= d.D && d.D <= (d.High-d.Low)/2
}

// fill draws the lower limit, takes the upper one as far from the middle, and
// draws between them (JCGM 101, 6.4.3).
func (d InexactRectangular) Fill(dst []float64, s *random.Source) {
	low := d.Low - d.D
	longest := d.High - d.Low + 2*d.D
	state := s.State
	for i := range dst {
		var bits uint64
		bits, state = random.Next(state)
		u, v := halves(bits)
		in := float64(2 * d.D * u)
		dst[i] = low + (in + float64((longest-2*in)*v))
	}
	s.State = state
}
