package uncertainty

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

// Limits is a tolerance interval in the sense of JCGM 106: the values that are
// permitted. An end that is not limited is infinite.
type Limits struct{ Lower, Upper float64 }

// Permits reports whether a value lies within the limits.
func (l Limits) Permits(v float64) bool { return l.Lower <= v && v <= l.Upper }

// ConformanceProbability is the normal approximation of JCGM 106, 7.2 to 7.4:
//
//	p = Φ((T_U - y)/u) - Φ((T_L - y)/u)
//
// It is 0 or 1 when nothing is uncertain.
func (a Analytic) ConformanceProbability(l Limits) float64 {
	if a.StandardUncertainty == 0 {
		if l.Permits(a.Value) {
			return 1
		}
		return 0
	}
	below := func(limit float64) float64 {
		return distuv.UnitNormal.CDF((limit - a.Value) / a.StandardUncertainty)
	}
	if math.IsInf(l.Lower, -1) {
		return below(l.Upper)
	}
	// The same difference taken in the upper tail, which keeps its digits.
	above := func(limit float64) float64 {
		return distuv.UnitNormal.CDF((a.Value - limit) / a.StandardUncertainty)
	}
	return math.Max(0, above(l.Lower)-above(l.Upper))
}

// ConformanceProbability is the fraction of the trials within the limits.
func (mc *MonteCarlo) ConformanceProbability(l Limits) float64 {
	inside := mc.tally.below(l.Upper, true) - mc.tally.below(l.Lower, false)
	return max(0, inside) / float64(mc.tally.size())
}

// Within is the least half-width round a value that holds the fraction p of the
// trials.
func (mc *MonteCarlo) Within(center, p float64) float64 {
	low := 0.0
	high := math.Max(math.Abs(mc.tally.at(0)-center), math.Abs(mc.tally.at(mc.tally.size()-1)-center))
	for middle := high / 2; middle > low && middle < high; middle = low + (high-low)/2 {
		if mc.ConformanceProbability(Limits{center - middle, center + middle}) >= p {
			high = middle
		} else {
			low = middle
		}
	}
	return high
}
