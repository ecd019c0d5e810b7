package uncertainty

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty/near"
)

// TestTwoTerms: JCGM 100, 4.3.7 example 2 and 5.1.5, a voltage with two limits
// of 14e-6 of the reading and 2e-6 of the range, and the scatter of 12 µV.
// Published u 8.7 and 15 µV; recomputed 8.6602506 and 14.798647.
func TestTwoTerms(t *testing.T) {
	m := new(Model)
	reading := add(m, "scatter", Normal{Mu: 0.928571, Sigma: 12e-6})
	limit := add(m, "correction", PlusMinus(14e-6*0.928571+2e-6))
	near.Absolute(t, "correction, published", 8.7e-6, propagate(t, m, limit, 0.95).StandardUncertainty, 0.05e-6)
	near.Relative(t, "correction", 8.6602506e-6, propagate(t, m, limit, 0.95).StandardUncertainty, 1e-7)
	a := propagate(t, m, m.Add(reading, limit), 0.95)
	near.Relative(t, "combined", 14.798647e-6, a.StandardUncertainty, 1e-7)
	near.Relative(t, "relative", 1.5937011e-5, a.StandardUncertainty/a.Value, 1e-7)
}

// TestResultHangsTogether: JCGM 100, 6.2.1 and 6.3: U = k u, value ± U.
func TestResultHangsTogether(t *testing.T) {
	m := new(Model)
	a := propagate(t, m, add(m, "x", Normal{Mu: 10, Sigma: 2}), 0.99)
	assert.Equal(t, 10.0, a.Value)
	assert.Equal(t, 2.0, a.StandardUncertainty)
	assert.Equal(t, 0.99, a.CoverageProbability)
	near.Relative(t, "k", 2.5758293, a.CoverageFactor, 1e-7)
	near.Relative(t, "U", 2*2.5758293, a.ExpandedUncertainty, 1e-7)
	near.Relative(t, "lower", 10-2*2.5758293, a.Lower(), 1e-7)
	near.Relative(t, "upper", 10+2*2.5758293, a.Upper(), 1e-7)
	assert.Equal(t, true, math.IsInf(a.DegreesOfFreedom, 1))
}

// TestWelchSatterthwaite: JCGM 100, G.4.1, Y = b X1 X2 X3 from 10, 5 and 15
// readings. Published 1.03 %, ν_eff 19.0, t95 2.09, U 2.2 %.
func TestWelchSatterthwaite(t *testing.T) {
	m := new(Model)
	x1 := known(m, "X1", Normal{Mu: 3, Sigma: 3 * 0.0025}, 9)
	x2 := known(m, "X2", Normal{Mu: 20, Sigma: 20 * 0.0057}, 4)
	x3 := known(m, "X3", Normal{Mu: 0.5, Sigma: 0.5 * 0.0082}, 14)
	a := propagate(t, m, m.Multiply(m.Multiply(m.Multiply(m.Constant(7), x1), x2), x3), 0.95)
	near.Relative(t, "u/y", 0.010294659, a.StandardUncertainty/a.Value, 1e-7)
	near.Relative(t, "ν_eff", 18.998742, a.DegreesOfFreedom, 1e-7)
	near.Relative(t, "k", 2.0930334, a.CoverageFactor, 1e-7)
	near.Absolute(t, "U/y, published", 0.022, a.ExpandedUncertainty/a.Value, 0.0005)
	near.Relative(t, "U/y", 0.010294659*2.0930334, a.ExpandedUncertainty/a.Value, 1e-7)
}

// TestInfiniteDegreesAddNothing: JCGM 100, G.4.2 and G.4.3: a term with
// infinite ν lowers no ν_eff: y = x + z, ν_eff = 5 (1 + 1)²/1 = 20 for equal u.
func TestInfiniteDegreesAddNothing(t *testing.T) {
	m := new(Model)
	x, z := known(m, "x", Normal{Mu: 1, Sigma: 0.1}, 5), add(m, "z", Normal{Mu: 1, Sigma: 0.1})
	near.Relative(t, "ν_eff", 20, propagate(t, m, m.Add(x, z), 0.95).DegreesOfFreedom, 1e-14)
	near.Relative(t, "ν of one", 5, propagate(t, m, x, 0.95).DegreesOfFreedom, 1e-14)
}

func TestConstantModel(t *testing.T) {
	m := new(Model)
	a := propagate(t, m, m.Multiply(m.Constant(3), m.Constant(4)), 0.95)
	assert.Equal(t, 12.0, a.Value)
	assert.Equal(t, 0.0, a.ExpandedUncertainty)
	assert.Equal(t, true, math.IsInf(a.DegreesOfFreedom, 1))
	assert.Equal(t, 0, len(a.Budget))
	// An influence that is certain.
	a = propagate(t, m, known(m, "exact", Normal{Mu: 5, Sigma: 0}, 3), 0.95)
	assert.Equal(t, 0.0, a.ExpandedUncertainty)
	assert.Equal(t, 0.0, a.Budget[0].Share)
}

func TestPropagatePanics(t *testing.T) {
	m := new(Model)
	one := m.Constant(1)
	panics(t, "uncertainty: coverage probability 1 is not between 0 and 1", func() { _, _ = m.Propagate(one, 1) })
	panics(t, "uncertainty: node 1 is not of this model", func() { _, _ = m.Propagate(one+1, 0.95) })
	panics(t, "uncertainty: node -1 is not of this model", func() { m.Add(-1, one) })
}

func TestNotFinite(t *testing.T) {
	m := new(Model)
	huge := m.Multiply(m.Constant(1e300), m.Constant(1e300))
	_, err := m.Propagate(huge, 0.95)
	assert.Equal(t, ErrNotFinite, err)
	wide := m.Multiply(add(m, "x", Normal{Mu: 1, Sigma: 1e200}), m.Constant(1e200))
	_, err = m.Propagate(wide, 0.95)
	assert.Equal(t, ErrNotFinite, err)
}

// TestUnitsScaleOut: relative uncertainty, shares, ν and k do not depend on the
// unit, from units in which squares underflow to those in which they overflow.
func TestUnitsScaleOut(t *testing.T) {
	var first Analytic
	for i, unit := range []float64{1, 1e-9, 1e9, 1e-180, 1e180} {
		m := new(Model)
		x := known(m, "x", Normal{Mu: 2 * unit, Sigma: 0.1 * unit}, 7)
		y := known(m, "y", Normal{Mu: 3 * unit, Sigma: 0.2 * unit}, 4)
		a := propagate(t, m, m.Add(x, y), 0.95)
		if i == 0 {
			first = a
		}
		what := fmt.Sprintf("unit %g: ", unit)
		near.Relative(t, what+"relative u", math.Sqrt(0.05)/5, a.StandardUncertainty/a.Value, 1e-13)
		near.Relative(t, what+"ν", first.DegreesOfFreedom, a.DegreesOfFreedom, 1e-13)
		near.Relative(t, what+"share", 0.8, a.Budget[0].Share, 1e-13)
	}
}

// TestUnrelatedNodesChangeNothing: also those that could not be evaluated.
func TestUnrelatedNodesChangeNothing(t *testing.T) {
	alone, _ := ratio(new(Model))
	m := new(Model)
	zero := add(m, "zero", Normal{Mu: 0, Sigma: 1})
	m.Divide(m.Constant(1), m.Subtract(zero, zero))
	among, out := ratio(m)
	m.Multiply(out, m.Divide(out, zero))
	assert.Equal(t, propagate(t, alone, Node(len(alone.nodes)-1), 0.95), propagate(t, among, out, 0.95))
}

func ratio(m *Model) (*Model, Node) {
	return m, m.Divide(known(m, "x", Normal{Mu: 2, Sigma: 0.1}, 6), add(m, "y", Rectangular{Low: 2.9, High: 3.1}))
}
