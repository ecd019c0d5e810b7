package uncertainty

import (
	"errors"
	"fmt"
	"math"

	"minim/uncertainty/portable"
	"minim/uncertainty/rounding"
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

// Relative is the relative expanded uncertainty U/|Value|; not a number or infinite where the
// value is 0.
func (a *Analytic) Relative() float64 { return a.ExpandedUncertainty / math.Abs(a.Value) }

// Factors prints u and k: see [rounding.Factors].
func (a *Analytic) Factors() (u, k string) {
	return rounding.Factors(a.StandardUncertainty, a.CoverageFactor, a.ExpandedUncertainty)
}

// Contribution is one line of an uncertainty budget.
type Contribution struct {
	Influence
	// Uses counts how many quantities of the model are made from it: it is shared where
	// that is more than one.
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

// ErrNotFinite reports a model whose value or uncertainty is not a finite
// number.
var ErrNotFinite = errors.New("the result is not a finite number")

// Propagate evaluates a node by the law of propagation of uncertainty, first
// order with exact derivatives (JCGM 100, 5.1.2 and 5.2.2):
//
//	u² = Σ_i Σ_j r_ij (c_i u_i) (c_j u_j),  U = k u
//
// where k is the t quantile for the coverage probability 0 < p < 1 and the
// unrounded effective degrees of freedom (G.4.1, G.6.4):
//
//	ν_eff = u⁴ / Σ (c_i u_i)⁴/ν_i
//
// That formula holds for independent, roughly normal contributions, and is the
// poorer the fewer degrees of freedom the largest of them has. Influences with
// correlation coefficients count in it as one contribution, with the least of
// their degrees of freedom: readings taken in sets have that many (H.2).
// Errors: [ZeroDivisorError], [ErrNotFinite].
func (m *Model) Propagate(out Node, coverage float64) (Analytic, error) {
	mustBeProbability("coverage", coverage)
	needed := m.reachable(out)
	if err := m.checkDivisors(needed); err != nil {
		return Analytic{}, err
	}
	v := m.values(out, mean)
	gradient := m.gradient(out, v)
	c := m.contributions(gradient)
	rc := m.correlate(c)
	a := Analytic{Value: v[out], CoverageProbability: coverage}
	a.StandardUncertainty = combine(c, rc)
	if a.StandardUncertainty <= negligible*math.Abs(a.Value) {
		a.StandardUncertainty = 0
		clear(c)
		clear(rc)
	}
	a.Budget = m.budget(needed, gradient, c, rc, a.StandardUncertainty)
	a.DegreesOfFreedom = m.effectiveDegreesOfFreedom(c, rc, a.StandardUncertainty)
	a.CoverageFactor = CoverageFactor(coverage, a.DegreesOfFreedom)
	a.ExpandedUncertainty = a.CoverageFactor * a.StandardUncertainty
	if !portable.IsFinite(a.Lower()) || !portable.IsFinite(a.Upper()) {
		return Analytic{}, ErrNotFinite
	}
	return a, nil
}

// contributions returns c_i u_i for each influence of the model.
func (m *Model) contributions(gradient []float64) []float64 {
	c := make([]float64, len(gradient))
	for i, g := range gradient {
		if g != 0 {
			c[i] = g * m.influences[i].Distribution.Summary().StandardUncertainty
		}
	}
	return c
}

// negligible is the relative size below which an uncertainty or a difference is
// what is left of floating point numbers that cancel, and counts as 0.
const negligible = 1e-13

func mustBeProbability(of string, p float64) {
	if !(p > 0 && p < 1) {
		panic(fmt.Sprintf("uncertainty: %s probability %v is not between 0 and 1", of, p))
	}
}

// combine returns √(Σ c_i (R c)_i), scaled so that it neither overflows nor
// loses small numbers.
func combine(c, rc []float64) float64 {
	largest := 0.0
	for _, x := range c {
		largest = max(largest, math.Abs(x)) // NaN stays NaN
	}
	if largest == 0 {
		return 0
	}
	sum := 0.0
	for i := range c {
		sum += float64((c[i] / largest) * (rc[i] / largest))
	}
	return largest * math.Sqrt(max(0, sum))
}
