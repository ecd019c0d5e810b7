package uncertainty

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty/near"
)

// The checks of this file are constructed, with closed forms: relative u of the
// aliquot 1 %, of the second volume 0.5 %, one to ten in every step.

// dilute makes n steps of 1 mL to 10 mL; owner names the glass of a step.
// An aliquot goes to the mark (c v/V), or meets 9 mL diluent (c v/(v + w)).
func dilute(m *Model, n int, toTheMark bool, owner func(step int) string) Node {
	c := m.Constant(1)
	for i := range n {
		glass := func(name string, v, u float64) Node {
			return m.Influence(Influence{Code: Code(name), Owner: Owner{Name: owner(i)}, Distribution: Normal{Mu: v, Sigma: v * u}})
		}
		v := glass("aliquot", 1, 0.01)
		total := m.Add(v, glass("diluent", 9, 0.005))
		if toTheMark {
			total = glass("flask", 10, 0.005)
		}
		c = m.Divide(m.Multiply(c, v), total)
	}
	return c
}

func fresh(step int) string { return fmt.Sprint("piece ", step) }
func same(int) string       { return "the piece" }

// TestBiasCancels: one common relative bias of both volumes leaves nothing, and
// not a little: the slopes of a power of two cancel without a remainder.
func TestBiasCancels(t *testing.T) {
	for _, toTheMark := range []bool{true, false} {
		m := new(Model)
		c := m.Constant(1)
		bias := m.Add(m.Constant(1), add(m, "bias", Normal{Mu: 0, Sigma: 0.01}))
		for range 4 {
			v, w := m.Multiply(m.Constant(1), bias), m.Multiply(m.Constant(7), bias)
			total := m.Add(v, w)
			if toTheMark {
				total = m.Multiply(m.Constant(8), bias)
			}
			c = m.Divide(m.Multiply(c, v), total)
		}
		a := propagate(t, m, c, 0.95)
		assert.Equal(t, 0.0, a.StandardUncertainty)
		assert.Equal(t, 0.0, a.Budget[0].Share)
		mc := simulate(t, m, c, Settings{Trials: 10_000})
		near.Relative(t, "every trial", mc.Quantile(0), mc.Quantile(1), 4e-15)
	}
}

// TestNineFills: nine fills of a 1 mL pipette onto one fill of the same leave
// no bias; a bias of the piece by the mL of a graduated one, 1 mL and then
// 9 mL, with an error of its own at each mark, does leave some.
func TestNineFills(t *testing.T) {
	m := new(Model)
	fill := m.Add(m.Constant(1), add(m, "bias", PlusMinus(0.01)))
	total := fill
	for range 9 {
		total = m.Add(total, fill)
	}
	near.Absolute(t, "u", 0, propagate(t, m, m.Divide(fill, total), 0.95).StandardUncertainty, 1e-18)
	m = new(Model)
	one := m.Add(m.Constant(1), add(m, "bias", PlusMinus(0.01)))
	nine := m.Add(m.Constant(9), add(m, "bias", PlusMinus(0.01)))
	a := propagate(t, m, m.Divide(one, m.Add(one, nine)), 0.95)
	// Closed form: (w - v)/(v + w)² u(bias) = 0.08 × 0.01/√3.
	near.Relative(t, "u, 1 mL and 9 mL", 0.08*0.01/math.Sqrt(3), a.StandardUncertainty, 1e-13)
}
