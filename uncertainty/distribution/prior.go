package distribution

import (
	"fmt"
	"math"

	"minim/uncertainty/portable"
	"minim/uncertainty/posterior"
)

// Prior is what was known of a quantity before it was measured: a rectangular, triangular or
// normal distribution, moved by Shift, to which an independent normal error with standard
// deviation Blur is added.
type Prior struct {
	Of          Distribution
	Shift, Blur float64
}

// Mean of the prior.
func (p Prior) Mean() float64 { return p.Of.Summary().Mean + p.Shift }

// Measured is what readings say of a quantity.
type Measured = posterior.Measured

// Given is what is known of the quantity after it was measured: the product of the density of the
// prior and the likelihood of the readings, by quadrature (Bayes' theorem as in JCGM 106, clause
// A.4; where both are normal it is [Normal.Given]). It panics where the two exclude each other,
// which [Prior.Chance] says first.
//
// Where the readings are of a set its u is that of the product for σ = s, as that of a [StudentT] is: the
// degrees of freedom of the set widen the coverage factor.
func (p Prior) Given(m Measured) Distribution {
	d := p.given(m)
	if d.ofSet = m.OfSet; d.ofSet {
		at := p.given(Measured{Mean: m.Mean, Scale: m.Scale, Nu: math.Inf(1)})
		d.about.StandardUncertainty = at.spread
	}
	return d
}

func (p Prior) given(m Measured) Tabulated {
	t, ok := p.known(m).Given(m)
	if !ok {
		panic(fmt.Sprintf("uncertainty: %v and %v exclude each other", p, m))
	}
	return tabulated(t)
}

// Chance is how likely a mean lies as far from what the prior lets expect as the one that was
// found, or further, to either side: of the predictive distribution of the mean (JCGM 106, A.4.4, of
// which the normal case is the denominator), in which the prior and the error of the mean come
// together. A small one says that one of the two is wrong.
func (p Prior) Chance(m Measured) float64 { return p.known(m).Chance(m) }

// known panics where prior or readings are nothing that can be known.
func (p Prior) known(m Measured) posterior.Prior {
	p.mustBeSound(m)
	s := p.Of.Summary()
	k := posterior.Prior{Shape: posterior.Flat, Low: s.Low, High: s.High, Mean: s.Mean, Deviation: s.StandardUncertainty, Shift: p.Shift, Blur: p.Blur}
	switch p.Of.(type) {
	case Normal:
		k.Shape = posterior.Normal
	case Triangular:
		k.Shape = posterior.Peaked
	}
	return k
}

func (p Prior) mustBeSound(m Measured) {
	known := false
	switch p.Of.(type) {
	case Normal, Rectangular, Triangular:
		known = p.Of.Sound() && p.Blur >= 0 && portable.IsFinite(p.Blur) && portable.IsFinite(p.Shift) && SummaryOf(p.Of).StandardUncertainty+p.Blur > 0
	}
	if !known || !portable.IsFinite(m.Mean) || !(m.Scale > 0) || !portable.IsFinite(m.Scale) || !(m.Nu > 0) {
		panic(fmt.Sprintf("uncertainty: %#v measured as %v", p, m))
	}
}
