package uncertainty

import (
	"math"

	"minim/uncertainty/portable"
)

// SecondOrder is what the terms of second order add to a first-order result.
type SecondOrder struct {
	// Shift of the estimate, ½ Σ ∂²f/∂x_i² u_i²: about by how much the mean
	// of the quantity differs from its value at the means of the influences.
	Shift float64
	// Variance that the terms add to u². It may be negative.
	Variance float64
	// StandardUncertainty u with these terms; NaN where they would make the
	// variance negative, so that the expansion is of no use.
	StandardUncertainty float64
	// First and Second are the two influences whose common term is the
	// largest; they are the same where it is the curvature of one, and nil
	// where all terms are 0.
	First, Second *Influence
}

// Matters reports whether the terms change the standard uncertainty u of the
// first order by more than 5 %, or cannot be used.
func (s SecondOrder) Matters(u float64) bool {
	return !(math.Abs(s.StandardUncertainty-u) <= 0.05*u)
}

// PropagateSecondOrder evaluates the terms of second order of a node with exact
// derivatives. For independent influences in units of their u, where g_i, h_ij
// and h_ijj are the derivatives of first to third order, and γ_i and κ_i the
// skewness and kurtosis, they add to u²
//
//	Σ_i g_i h_ii γ_i + ¼ Σ_i h_ii² (κ_i - 1) + ½ Σ_i Σ_j≠i h_ij²
//	+ Σ_i g_i (⅓ h_iii κ_i + Σ_j≠i h_ijj)
//
// which for normal ones is the formula in the note to JCGM 100, 5.1.2: Σ_i Σ_j
// (½ h_ij² + g_i h_ijj). A Student t counts as normal, since JCGM 100 takes its
// scale as u. Influences with correlation coefficients are normal, and are
// replaced by as many independent ones. Errors: [ZeroDivisorError],
// [ErrNotFinite].
func (m *Model) PropagateSecondOrder(out Node) (SecondOrder, error) {
	needed := m.reachable(out)
	if err := m.checkDivisors(needed); err != nil {
		return SecondOrder{}, err
	}
	v := m.values(out, mean)
	axes, scale := m.axes(needed, m.gradient(out, v))
	m.setCurvatures(out, needed, axes, scale)
	s := sumTerms(axes)
	m.addMixedTerms(&s, out, v, axes, scale)
	s.settle(axes, math.Abs(v[out])/scale)
	s.Shift *= scale
	s.Variance *= scale * scale
	s.StandardUncertainty *= scale
	if !portable.IsFinite(v[out]) || !portable.IsFinite(s.Shift) || !portable.IsFinite(s.Variance) || math.IsInf(s.StandardUncertainty, 0) {
		return SecondOrder{}, ErrNotFinite
	}
	return s.SecondOrder, nil
}

// settle works out the standard uncertainty, taking as 0 what is left of floating
// point numbers that cancel.
func (s *SecondOrder) settle(axes []axis, value float64) {
	total := s.Variance
	for i := range axes {
		total += times(axes[i].g, axes[i].g)
	}
	switch least := negligible * value; {
	case math.Abs(total) <= least*least:
		s.Variance, s.StandardUncertainty = 0, 0
	case total < 0:
		s.StandardUncertainty = math.NaN()
	default:
		s.StandardUncertainty = math.Sqrt(total)
	}
	if math.Abs(s.Shift) <= negligible*value {
		s.Shift = 0
	}
}

// terms adds up a SecondOrder, and keeps the size of the largest term.
type terms struct {
	SecondOrder
	largest float64
}

// consider notes the influences of a term when it is larger than those before.
func (s *terms) consider(size float64, first, second *Influence) {
	if size > s.largest {
		s.largest, s.First, s.Second = size, first, second
	}
}

// sumTerms adds up all terms but the mixed ones h_ij.
func sumTerms(axes []axis) terms {
	var s terms
	for i := range axes {
		a := &axes[i]
		s.Shift += float64(a.h / 2)
		s.Variance += times(times(a.g, a.h), a.skewness) + times(times(a.h, a.h), (a.kurtosis-1)/4)
		s.Variance += times(times(a.g, a.third), a.kurtosis/3) + a.others - times(a.g, a.third)
		s.consider(math.Abs(a.h)*math.Sqrt(a.kurtosis-1)/2, a.of, a.of)
	}
	return s
}

// addMixedTerms adds Σ h_ij² over all pairs.
func (m *Model) addMixedTerms(s *terms, out Node, v []float64, axes []axis, scale float64) {
	w := newSweep(out)
	d := make([]float64, len(m.influences))
	for i := range axes {
		axes[i].write(d)
		h := m.hessianTimes(out, v, d, w)
		axes[i].erase(d)
		for j := range axes[:i] {
			mixed := axes[j].along(h) / scale
			s.Variance += times(mixed, mixed)
			s.consider(math.Abs(mixed), axes[j].of, axes[i].of)
		}
	}
}
