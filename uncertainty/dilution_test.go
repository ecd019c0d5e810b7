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
			return m.Influence(Influence{Name: name, Owner: owner(i), Distribution: Normal{v, v * u}})
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

// TestDilutions: fresh pieces √n and one piece n times the figure of one step,
// √(u_v² + u_V²) to the mark and (1 - 1/D) √(u_v² + u_w²) with diluent. The
// simulated SD is from 10^7 trials elsewhere, good to 1e-5 at the most.
func TestDilutions(t *testing.T) {
	for _, c := range []struct {
		n                   int
		toTheMark           bool
		owner               func(int) string
		analytic, simulated float64
	}{
		{1, true, fresh, 0.011180340, 0.011183121}, {2, true, fresh, 0.015811388, 0.015813417}, {4, true, fresh, 0.022360680, 0.022368129},
		{1, true, same, 0.011180340, 0.011181524}, {2, true, same, 0.022360680, 0.022368122}, {4, true, same, 0.044721360, 0.044768422},
		{1, false, fresh, 0.010062306, 0.010063803}, {2, false, fresh, 0.014230249, 0.014228427}, {4, false, fresh, 0.020124612, 0.020128455},
		{1, false, same, 0.010062306, 0.010060657}, {2, false, same, 0.020124612, 0.020124868}, {4, false, same, 0.040249224, 0.040268594},
	} {
		m := new(Model)
		out := dilute(m, c.n, c.toTheMark, c.owner)
		a := propagate(t, m, out, 0.95)
		what := fmt.Sprintf("n %d, to the mark %v, %s: ", c.n, c.toTheMark, c.owner(1))
		near.Relative(t, what+"value", math.Pow(10, -float64(c.n)), a.Value, 1e-14)
		near.Relative(t, what+"u", c.analytic, a.StandardUncertainty/a.Value, 1e-7)
		if c.n == 4 || c.n == 1 {
			mc := simulate(t, m, out, Settings{Trials: 200_000, Seed: 11})
			near.Relative(t, what+"simulated", c.simulated, mc.StandardDeviation/a.Value, 5.3/math.Sqrt(2*200_000))
		}
	}
}

// TestBiasCancels: one common relative bias of both volumes leaves nothing, and
// not a little: the slopes of a power of two cancel without a remainder.
func TestBiasCancels(t *testing.T) {
	for _, toTheMark := range []bool{true, false} {
		m := new(Model)
		c := m.Constant(1)
		bias := m.Add(m.Constant(1), add(m, "bias", Normal{0, 0.01}))
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

// TestProductOfFactors: exact coefficient of variation of a product of n
// independent factors, (1 + c²)^n - 1 squared (Goodman 1960), and the first
// order c √n.
func TestProductOfFactors(t *testing.T) {
	for _, c := range []struct {
		cv           float64
		n            int
		exact, first float64
	}{{0.01, 10, 0.031629893, 0.031622777}, {0.05, 4, 0.10018764, 0.1}, {0.10, 5, 0.22585405, 0.2236068}} {
		m := new(Model)
		y := m.Constant(1)
		for i := range c.n {
			y = m.Multiply(y, add(m, fmt.Sprint(i), Normal{1, c.cv}))
		}
		near.Relative(t, "first order", c.first, propagate(t, m, y, 0.95).StandardUncertainty, 1e-7)
		mc := simulate(t, m, y, Settings{Trials: trials, Seed: 5})
		near.Relative(t, "simulated", c.exact, mc.StandardDeviation, 5*0.9*perRoot)
	}
}
