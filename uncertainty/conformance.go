package uncertainty

import (
	"fmt"
	"math"

	"minim/uncertainty/portable"
	"minim/uncertainty/sharp"
	"minim/uncertainty/statistics"
)

// Limits is a tolerance interval in the sense of JCGM 106: the values that are
// permitted. An end that is not limited is infinite.
type Limits struct{ Lower, Upper float64 }

// Permits reports whether a value lies within the limits.
func (l Limits) Permits(v float64) bool { return l.Lower <= v && v <= l.Upper }

// ConformanceProbability is the probability that a quantity known like this lies within
// the limits, by the normal approximation (JCGM 106, 7.2 to 7.4) with y = Value and
// u = StandardUncertainty, and with the t-distribution for the effective degrees of freedom in place
// of the normal one where they are few (0 counts as infinitely many):
//
//	p = Φ((T_U - y)/u) - Φ((T_L - y)/u)
//
// It is 0 or 1 when nothing is uncertain. Whoever accepts an item that is known
// like this takes the specific consumer's risk 1 - p; whoever rejects it takes
// the specific producer's risk p (clause 9).
func (a Analytic) ConformanceProbability(l Limits) float64 {
	return l.conformanceProbability(a.Value, a.StandardUncertainty, orInfinite(a.DegreesOfFreedom))
}

// conformanceProbability is that of a value y with the standard uncertainty u,
// which has infinitely many degrees of freedom when it is normal.
func (l Limits) conformanceProbability(y, u, degreesOfFreedom float64) float64 {
	l.mustBeNumbers()
	mustBeKnown(y, u, degreesOfFreedom)
	if u == 0 {
		if l.Permits(y) {
			return 1
		}
		return 0
	}
	return portable.StudentBetween((l.Lower-y)/u, (l.Upper-y)/u, degreesOfFreedom)
}

// orInfinite is infinite for no degrees of freedom.
func orInfinite(nu float64) float64 {
	if nu == 0 {
		return math.Inf(1)
	}
	return nu
}

// mustBeNumbers refuses limits that are not numbers. Crossed limits permit
// nothing.
func (l Limits) mustBeNumbers() {
	if math.IsNaN(l.Lower) || math.IsNaN(l.Upper) {
		panic(fmt.Sprintf("uncertainty: limits %v to %v are not numbers", l.Lower, l.Upper))
	}
}

func mustBeKnown(y, u, degreesOfFreedom float64) {
	if !portable.IsFinite(y) || !(u >= 0) || math.IsInf(u, 1) || !(degreesOfFreedom > 0) {
		panic(fmt.Sprintf("uncertainty: value %v with u = %v and %v degrees of freedom", y, u, degreesOfFreedom))
	}
}

// ConformanceProbability is the fraction of the trials within the limits, or what they show of it.
func (mc *MonteCarlo) ConformanceProbability(l Limits) float64 { return mc.inside(l).Value }

// ChanceError is the standard error of [MonteCarlo.ConformanceProbability].
func (mc *MonteCarlo) ChanceError(l Limits) float64 { return mc.inside(l).Err }

// Chance is both at once, which takes half the time.
func (mc *MonteCarlo) Chance(l Limits) (p, standardError float64) {
	e := mc.inside(l)
	return e.Value, e.Err
}

func (mc *MonteCarlo) inside(l Limits) statistics.Estimate {
	if sharp, yes := mc.tally.(*sharp.Tally); yes {
		return sharp.Inside(l.Lower, l.Upper)
	}
	e := mc.insideTally(l)
	if mc.ByLaw {
		e.Err = 0
	}
	return e
}

// insideTally counts, without the trials of a sharpened run.
func (mc *MonteCarlo) insideTally(l Limits) statistics.Estimate {
	n := float64(mc.tally.Size())
	p := max(0, mc.tally.Below(l.Upper, true)-mc.tally.Below(l.Lower, false)) / n
	return statistics.Estimate{Value: p, Err: math.Sqrt(p * (1 - p) / n)}
}

// Within is the least half-width round a value that holds the fraction p of the
// trials.
func (mc *MonteCarlo) Within(center, p float64) float64 {
	low := 0.0
	high := math.Max(math.Abs(mc.tally.At(0)-center), math.Abs(mc.tally.At(mc.tally.Size()-1)-center))
	for half := high / 2; half > low && half < high; half = portable.Middle(low, high) {
		if mc.insideTally(Limits{center - half, center + half}).Value >= p {
			high = half
		} else {
			low = half
		}
	}
	return high
}
