package uncertainty

import (
	"math"
	"slices"

	"minim/uncertainty/mixture"
)

// Mixture is the distribution of the value, first order, with the scales of the readings that
// contributions are known from each by itself. What has degrees of freedom and belongs to no
// set of readings stands for a set of its own.
func (a *Analytic) Mixture() mixture.Mixture {
	var sets []Set
	var scatters []mixture.Scatter
	rest := 0.0
	for i := range a.Budget {
		line := &a.Budget[i]
		variance := float64(line.Share * a.StandardUncertainty * a.StandardUncertainty)
		at := slices.Index(sets, line.Set)
		switch {
		case !(line.DegreesOfFreedom > 0) || variance < 0:
			rest += variance
		case at >= 0 && line.Set != (Set{}):
			scatters[at].Variance += variance
		default:
			sets, scatters = append(sets, line.Set), append(scatters, mixture.Scatter{Variance: variance, DegreesOfFreedom: line.DegreesOfFreedom})
		}
	}
	x := mixture.New(max(0, rest), scatters)
	x.U = a.StandardUncertainty // to the last digit
	return x
}

// Mixed is the result with the expanded uncertainty, and so the coverage factor, of its
// [mixture.Mixture]: that of [Model.Propagate] where nothing is known from readings alone.
func (a Analytic) Mixed() Analytic {
	if math.IsInf(a.DegreesOfFreedom, 1) || a.StandardUncertainty == 0 {
		return a
	}
	x := a.Mixture()
	a.ExpandedUncertainty = x.Half(a.CoverageProbability)
	a.CoverageFactor = a.ExpandedUncertainty / a.StandardUncertainty
	return a
}
