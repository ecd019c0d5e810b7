package uncertainty

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

// CoverageFactor is the factor k for which a t-distributed quantity lies within
// ±k u with the coverage probability p: the quantile t_p(ν) of JCGM 100,
// table G.2, for any ν > 0, and the normal quantile for ν = +Inf.
func CoverageFactor(p, degreesOfFreedom float64) float64 {
	mustBeProbability(p)
	// 1 - tail rather than (1 + p)/2: the tail keeps its digits for p near 1.
	tail := (1 - p) / 2
	if math.IsInf(degreesOfFreedom, 1) || degreesOfFreedom > 1e8 {
		return -distuv.UnitNormal.Quantile(tail)
	}
	return -distuv.StudentsT{Sigma: 1, Nu: degreesOfFreedom}.Quantile(tail)
}

// effectiveDegreesOfFreedom is the Welch-Satterthwaite formula (JCGM 100,
// G.4.1). It takes the contributions as independent.
func effectiveDegreesOfFreedom(budget []Contribution, u float64) float64 {
	sum := 0.0
	for i := range budget {
		if nu := budget[i].DegreesOfFreedom; nu > 0 {
			r := budget[i].Contribution / u
			sum += r * r * r * r / nu
		}
	}
	if u == 0 || sum == 0 {
		return math.Inf(1)
	}
	return 1 / sum
}
