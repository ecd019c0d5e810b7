package uncertainty

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

// CoverageFactor is the factor k for which a t-distributed quantity lies within
// ±k u with the coverage probability p: the quantile t_p(ν) of JCGM 100,
// table G.2, for any ν > 0, and the normal quantile for ν = +Inf. It is +Inf for
// fewer than a thousandth of a degree of freedom.
func CoverageFactor(p, degreesOfFreedom float64) float64 {
	mustBeProbability(p)
	// 1 - tail rather than (1 + p)/2: the tail keeps its digits for p near 1.
	tail := (1 - p) / 2
	switch {
	case degreesOfFreedom < 0.001:
		return math.Inf(1)
	case degreesOfFreedom < 1000:
		return -distuv.StudentsT{Sigma: 1, Nu: degreesOfFreedom}.Quantile(tail)
	}
	return nearlyNormalFactor(-distuv.UnitNormal.Quantile(tail), degreesOfFreedom)
}

// nearlyNormalFactor is the t quantile for many degrees of freedom ν, by its
// expansion in 1/ν about the normal quantile z (Abramowitz and Stegun, 26.7.5,
// from memory; checked against tables). gonum's inverse does not converge there
// for probabilities near 0 and 1.
func nearlyNormalFactor(z, nu float64) float64 {
	z2 := z * z
	g1 := (z2 + 1) / 4
	g2 := ((5*z2+16)*z2 + 3) / 96
	g3 := (((3*z2+19)*z2+17)*z2 - 15) / 384
	return z * (1 + g1/nu + g2/nu/nu + g3/nu/nu/nu)
}

// effectiveDegreesOfFreedom is the Welch-Satterthwaite formula (JCGM 100, G.4.1)
// for contributions c, of which R c are the correlated sums; see [Model.Propagate].
func (m *Model) effectiveDegreesOfFreedom(c, rc []float64, u float64) float64 {
	if u == 0 {
		return math.Inf(1)
	}
	sum := 0.0
	for i := range c {
		if nu := m.influences[i].DegreesOfFreedom; nu > 0 && !m.isCorrelated(i) {
			r := c[i] / u
			sum += r * r * r * r / nu
		}
	}
	for _, g := range m.groups {
		variance, least := 0.0, math.Inf(1)
		for _, i := range g.members {
			variance += float64((c[i] / u) * (rc[i] / u))
			if nu := m.influences[i].DegreesOfFreedom; nu > 0 && c[i] != 0 {
				least = min(least, nu)
			}
		}
		sum += variance * variance / least
	}
	if sum == 0 {
		return math.Inf(1)
	}
	return 1 / sum
}
