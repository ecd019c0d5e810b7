package uncertainty

import (
	"math"

	"minim/uncertainty/portable"
)

// CoverageFactor is the factor k for which a t-distributed quantity lies within
// ±k u with the coverage probability p: the quantile t_p(ν) of JCGM 100,
// table G.2, for any ν > 0, and the normal quantile for ν = +Inf. It is +Inf for
// fewer than a thousandth of a degree of freedom.
func CoverageFactor(p, degreesOfFreedom float64) float64 {
	mustBeProbability("coverage", p)
	// The tail rather than (1 + p)/2: it keeps its digits for p near 1.
	return -portable.StudentQuantile((1-p)/2, degreesOfFreedom)
}

// effectiveDegreesOfFreedom is the Welch-Satterthwaite formula (JCGM 100, G.4.1)
// for contributions c, of which R c are the correlated sums; see [Model.Propagate]. Influences
// of one set of readings are one contribution: see [Set].
func (m *Model) effectiveDegreesOfFreedom(c, rc []float64, u float64) float64 {
	if u == 0 {
		return math.Inf(1)
	}
	sum := 0.0
	ofSets := make([]float64, len(m.scales))
	for i := range c {
		nu := m.influences[i].DegreesOfFreedom
		switch r := c[i] / u; {
		case !(nu > 0) || m.isCorrelated(i):
		case m.scaleOf[i] >= 0:
			ofSets[m.scaleOf[i]] += float64(r * r)
		default:
			sum += r * r * r * r / nu
		}
	}
	for k, variance := range ofSets {
		sum += variance * variance / m.scales[k].nu
	}
	for _, g := range m.groups {
		variance := 0.0
		for _, i := range g.members {
			variance += float64((c[i] / u) * (rc[i] / u))
		}
		if g.nu > 0 {
			sum += variance * variance / g.nu
		}
	}
	if sum == 0 {
		return math.Inf(1)
	}
	return 1 / sum
}
