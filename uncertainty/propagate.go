package uncertainty

import (
	"errors"
	"fmt"
	"math"
)

// Analytic is the result of the law of propagation of uncertainty.
type Analytic struct {
	// Value is the model at the means of all influences.
	Value float64
	// StandardUncertainty is the combined standard uncertainty u.
	StandardUncertainty float64
	// DegreesOfFreedom is the effective number of them, +Inf when every
	// influence has infinitely many.
	DegreesOfFreedom float64
	// CoverageProbability p, CoverageFactor k and ExpandedUncertainty U = k u.
	CoverageProbability, CoverageFactor, ExpandedUncertainty float64
	// Budget holds every influence that the value depends on, the largest
	// share first.
	Budget []Contribution
}

// Lower is Value - U.
func (a Analytic) Lower() float64 { return a.Value - a.ExpandedUncertainty }

// Upper is Value + U.
func (a Analytic) Upper() float64 { return a.Value + a.ExpandedUncertainty }

// Contribution is one line of an uncertainty budget.
type Contribution struct {
	Influence
	// Uses counts how many quantities of the model are made from it.
	Uses int
	// Sensitivity c is the partial derivative of the value.
	Sensitivity float64
	// StandardUncertainty u of the influence, in its unit.
	StandardUncertainty float64
	// Contribution is c u, with the sign of c.
	Contribution float64
	// Share of the variance. The shares of a budget add to 1, or are all 0
	// when nothing is uncertain.
	Share float64
}

// Shared reports whether more than one quantity of the model rests on the draw.
func (c *Contribution) Shared() bool { return c.Uses > 1 }

// ErrNotFinite reports a model whose value or uncertainty is not a finite
// number.
var ErrNotFinite = errors.New("the result is not a finite number")

// Propagate evaluates a node by the law of propagation of uncertainty, first
// order with exact derivatives (JCGM 100, 5.1.2):
//
//	u² = Σ (c_i u_i)²,  ν_eff = u⁴ / Σ (c_i u_i)⁴/ν_i,  U = k u
//
// where k is the t quantile for the coverage probability 0 < p < 1 and the
// unrounded ν_eff (G.4.1, G.6.4). Errors: [ZeroDivisorError], [ErrNotFinite].
func (m *Model) Propagate(out Node, coverage float64) (Analytic, error) {
	mustBeProbability(coverage)
	if err := m.checkDivisors(out); err != nil {
		return Analytic{}, err
	}
	v := m.values(out, func(in *Influence) float64 { return in.Distribution.Mean() })
	a := Analytic{Value: v[out], CoverageProbability: coverage}
	a.Budget = m.budget(out, m.gradient(out, v))
	a.StandardUncertainty = combine(a.Budget)
	if a.StandardUncertainty <= negligible*math.Abs(a.Value) {
		a.StandardUncertainty = 0
		for i := range a.Budget {
			a.Budget[i].Contribution, a.Budget[i].Share = 0, 0
		}
	}
	a.DegreesOfFreedom = effectiveDegreesOfFreedom(a.Budget, a.StandardUncertainty)
	a.CoverageFactor = CoverageFactor(coverage, a.DegreesOfFreedom)
	a.ExpandedUncertainty = a.CoverageFactor * a.StandardUncertainty
	if !finite(a.Value) || !finite(a.ExpandedUncertainty) {
		return Analytic{}, ErrNotFinite
	}
	return a, nil
}

// negligible is the relative size below which an uncertainty or a difference is
// what is left of floating point numbers that cancel, and counts as 0.
const negligible = 1e-13

func mustBeProbability(p float64) {
	if !(p > 0 && p < 1) {
		panic(fmt.Sprintf("uncertainty: coverage probability %v is not between 0 and 1", p))
	}
}

// combine is the root sum of squares of the contributions, scaled so that it
// neither overflows nor loses small numbers.
func combine(budget []Contribution) float64 {
	u := 0.0
	for i := range budget {
		u = math.Hypot(u, budget[i].Contribution)
	}
	return u
}
