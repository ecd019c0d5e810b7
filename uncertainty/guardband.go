package uncertainty

import (
	"errors"
	"fmt"
	"math"

	"minim/uncertainty/portable"
)

// errNothingAcceptable reports an uncertainty that is too large for the
// tolerance: by the decision rule, no measured value can be accepted. The limits
// that come with it permit nothing.
var errNothingAcceptable = errors.New("no measured value can be accepted: the uncertainty is too large for the tolerance")

// nothing is an acceptance interval without any value.
var nothing = Limits{math.Inf(1), math.Inf(-1)}

// guarded returns the acceptance limits that lie within the tolerance limits l
// by a guard band w on either side (JCGM 106, 8.3):
//
//	A_L = T_L + w,  A_U = T_U - w
//
// With w = 0 the rule is simple acceptance; with w = U guarded acceptance, which
// protects whoever takes the item; with w < 0 guarded rejection, which protects
// whoever offers it. An end that is not limited remains so. The error is
// [errNothingAcceptable].
func (l Limits) guarded(w float64) (Limits, error) {
	l.mustBeTolerance()
	if !portable.IsFinite(w) {
		panic(fmt.Sprintf("uncertainty: guard band %v is not finite", w))
	}
	acceptance := Limits{l.Lower + w, l.Upper - w}
	if acceptance.Lower > acceptance.Upper {
		return nothing, errNothingAcceptable
	}
	return acceptance, nil
}

// AcceptanceLimits returns the limits of the measured values for which the
// conformance probability with the tolerance limits l is at least p (JCGM 106,
// 8.3.2 and 7.7), when the measurement has the standard uncertainty u with so
// many degrees of freedom ν, +Inf for a normal distribution. For one limit
//
//	A_L = T_L + t_p(ν) u  or  A_U = T_U - t_p(ν) u
//
// and for two the interval, a little narrower than that, for whose ends the
// chances of lying beyond either limit add to 1 - p. A p below one half gives
// guarded rejection: what is rejected conforms with a probability below p. The
// error is [errNothingAcceptable].
func (l Limits) AcceptanceLimits(p, u, degreesOfFreedom float64) (Limits, error) {
	l.mustBeTolerance()
	mustBeProbability("conformance", p)
	mustBeKnown(0, u, degreesOfFreedom)
	w := float64(portable.StudentQuantile(p, degreesOfFreedom) * u)
	if u == 0 || math.IsInf(l.Upper-l.Lower, 1) {
		return l.guarded(w)
	}
	half := float64((l.Upper - l.Lower) / 2)
	// within reports whether the probability of nonconformance at a distance
	// from the middle is small enough.
	within := func(distance float64) bool {
		above := portable.StudentCDF((distance-half)/u, degreesOfFreedom)
		below := portable.StudentCDF((-distance-half)/u, degreesOfFreedom)
		return above+below <= 1-p
	}
	if !within(0) {
		return nothing, errNothingAcceptable
	}
	center := portable.Middle(l.Lower, l.Upper)
	distance := portable.Bisect(0, half-w, within)
	return Limits{center - distance, center + distance}, nil
}

// mustBeTolerance refuses limits that no value can lie within.
func (l Limits) mustBeTolerance() {
	if !(l.Lower <= l.Upper) || math.IsInf(l.Lower, 1) || math.IsInf(l.Upper, -1) {
		panic(fmt.Sprintf("uncertainty: %v to %v are not tolerance limits", l.Lower, l.Upper))
	}
}
