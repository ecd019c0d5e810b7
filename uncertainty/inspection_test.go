package uncertainty

import (
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/integrate/quad"

	"minim/uncertainty/portable"
)

// Inspection is a decision on conformance by measurement (JCGM 106, clause 9):
// an item is measured, accepted when the measured value lies within the
// acceptance limits, and rejected otherwise.
type Inspection struct {
	// Prior is the state of knowledge about items before they are measured,
	// such as the spread of a production.
	Prior Distribution
	// StandardUncertainty u of the measurement, whose error is normal.
	StandardUncertainty float64
	// Tolerance holds the limits for the true value, and Acceptance those for
	// the measured one: see [Limits.guarded] and [Limits.AcceptanceLimits].
	// Acceptance limits that are crossed accept nothing.
	Tolerance, Acceptance Limits
}

// GlobalRisks returns the global consumer's risk, the probability that an item
// does not conform and is accepted, and the global producer's risk, that it
// conforms and is rejected (JCGM 106, clause 9):
//
//	R_C = ∫ outside the tolerance f(x) P(x) dx
//	R_P = ∫ within the tolerance f(x) (1 - P(x)) dx
//
// where f is the density of the prior and P(x) the probability that the
// measured value of an item x lies within the acceptance limits. They are
// integrated numerically, with an error below 1e-9: against finer steps it is
// 1e-10 for a Student t, from its quantiles, and 1e-14 for other priors.
//
// The specific risks, at one measured value, follow from the conformance
// probability after the measurement: see [Normal.ConformanceProbability] and,
// for a normal prior, [Normal.Given].
func (i Inspection) GlobalRisks() (consumer, producer float64) {
	i.mustBeSound()
	ends := i.pieces()
	for k, high := range ends[1:] {
		low := ends[k]
		if i.Tolerance.Permits(i.item(portable.Middle(low, high))) {
			producer += integrate(i.rejected, low, high)
		} else {
			consumer += integrate(i.accepted, low, high)
		}
	}
	return consumer, producer
}

// The integrals run over a standard normal score z of the item, which stands in
// the prior where z stands in the normal distribution: a smooth function for
// any prior, with tails that vanish beyond ±lastScore (Φ(-8) = 6e-16).
const lastScore = 8

// item is the true value with the score z.
func (i Inspection) item(z float64) float64 {
	return quantileOf(i.Prior, portable.NormalCDF(z))
}

// score is the inverse of item, within ±lastScore.
func (i Inspection) score(item float64) float64 {
	return portable.Bisect(-lastScore, lastScore, func(z float64) bool { return i.item(z) < item })
}

// accepted is the density of the items with the score z that are accepted.
func (i Inspection) accepted(z float64) float64 {
	measured := Normal{Mu: i.item(z), Sigma: i.StandardUncertainty}
	return chanceOf(measured, i.Acceptance) * normalDensity(z)
}

// rejected is the density of the items with the score z that are not.
func (i Inspection) rejected(z float64) float64 {
	return normalDensity(z) - i.accepted(z)
}

// pieces returns scores, in order, between which the integrands are smooth: a
// step apart, at the tolerance limits, and a few u apart round the acceptance
// limits, where acceptance turns to rejection.
func (i Inspection) pieces() []float64 {
	const step = 0.5
	ends := []float64{i.score(i.Tolerance.Lower), i.score(i.Tolerance.Upper)}
	for z := -float64(lastScore); z <= lastScore; z += step {
		ends = append(ends, z)
	}
	for k := -9.0; k <= 9; k += 3 {
		by := float64(k * i.StandardUncertainty)
		ends = append(ends, i.score(i.Acceptance.Lower+by), i.score(i.Acceptance.Upper+by))
	}
	slices.Sort(ends)
	return ends
}

// integrate is the Gauss-Legendre rule for a smooth function.
func integrate(f func(float64) float64, low, high float64) float64 {
	return quad.Fixed(f, low, high, 16, quad.Legendre{}, 0)
}

// normalDensity is φ(z).
func normalDensity(z float64) float64 { return math.Exp(-z*z/2) / math.Sqrt(2*math.Pi) }

func (i Inspection) mustBeSound() {
	if i.Prior == nil || !i.Prior.Sound() {
		panic(fmt.Sprintf("uncertainty: prior %#v is not a distribution", i.Prior))
	}
	mustBeKnown(0, i.StandardUncertainty, math.Inf(1))
	i.Tolerance.mustBeTolerance()
	i.Acceptance.mustBeNumbers()
}
