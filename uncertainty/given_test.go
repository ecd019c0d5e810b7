package uncertainty

import (
	"math"

	"minim/uncertainty/portable"
)

// given returns the state of knowledge about a quantity, normal beforehand,
// after it was measured as y with a normal error of standard uncertainty u: the
// product of prior and likelihood (JCGM 106, clause 6),
//
//	Mu + w (y - Mu),  √w u,  w = Sigma²/(Sigma² + u²)
//
// A measurement without uncertainty counts alone.
func given(d Normal, y, u float64) Normal {
	mustBeKnown(d.Mu, d.Sigma, math.Inf(1))
	mustBeKnown(y, u, math.Inf(1))
	if u == 0 {
		return Normal{Mu: y, Sigma: 0}
	}
	root := d.Sigma / portable.Hypot(d.Sigma, u)
	return Normal{Mu: d.Mu + float64(root*root*(y-d.Mu)), Sigma: root * u}
}

// chanceOf is the conformance probability as that of [Analytic], for a quantity known like this: normal, or
// with the t-distribution of a few readings in the place of Φ.
func chanceOf(d Distribution, l Limits) float64 {
	nu := math.Inf(1)
	if t, student := d.(StudentT); student {
		nu = t.Nu
	}
	about := d.Summary()
	return l.conformanceProbability(about.Mean, about.StandardUncertainty, nu)
}

// MeasurementCapability returns the measurement capability index of a
// measurement with the standard uncertainty u (JCGM 106, 7.6):
//
//	C_m = (T_U - T_L)/(4 u)
//
// ok is false where there is none: for an end that is not limited, and for a
// measurement without uncertainty.
func (l Limits) MeasurementCapability(u float64) (index float64, ok bool) {
	l.mustBeTolerance()
	mustBeKnown(0, u, math.Inf(1))
	index = (l.Upper - l.Lower) / (4 * u)
	if !portable.IsFinite(index) {
		return 0, false
	}
	return index, true
}
