package uncertainty

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty/near"
)

// TestSquareOfGamma: constructed. For x gamma with α = 4 and θ = 1/4 the moments
// E[x^k] = θ^k α (α + 1) … give x² the mean 1.25 and the variance 1.71875, which
// the terms of second order give exactly: skewness and kurtosis count.
func TestSquareOfGamma(t *testing.T) {
	m := new(Model)
	x := add(m, "x", Gamma{Mu: 1, Sigma: 0.5})
	s := secondOrder(t, m, m.Multiply(x, x))
	near.Relative(t, "shift", 0.25, s.Shift, 1e-14)
	near.Relative(t, "variance", 1.71875, s.StandardUncertainty*s.StandardUncertainty, 1e-14)
	near.Relative(t, "variance beyond the first order", 0.71875, s.Variance, 1e-14)
}

func TestNoSecondOrder(t *testing.T) {
	m, y := sumOf(Normal{Mu: 1, Sigma: 2}, Gamma{Mu: 1, Sigma: 1})
	s := secondOrder(t, m, y)
	near.Relative(t, "u", math.Sqrt(5), s.StandardUncertainty, 1e-15)
	assert.Equal(t, SecondOrder{StandardUncertainty: s.StandardUncertainty}, s)
}

// TestLargestTerm: of (x + 3 y) z, with u of 1 each, it is 3 y z.
func TestLargestTerm(t *testing.T) {
	m := new(Model)
	x, y, z := add(m, "x", Normal{Mu: 0, Sigma: 1}), add(m, "y", Normal{Mu: 0, Sigma: 1}), add(m, "z", Normal{Mu: 0, Sigma: 1})
	s := secondOrder(t, m, m.Multiply(m.Add(x, m.Multiply(m.Constant(3), y)), z))
	assert.Equal(t, []string{"y", "z"}, []string{codeOf(s.First), codeOf(s.Second)})
	near.Relative(t, "u", math.Sqrt(10), s.StandardUncertainty, 1e-15)
}

// TestExpansionOfNoUse: sin x with u = 2 at 0 has the first-order variance 4, and
// g h_iii κ/3 u⁴ = -16 of second order.
func TestExpansionOfNoUse(t *testing.T) {
	m := new(Model)
	s := secondOrder(t, m, m.Sine(add(m, "x", Normal{Mu: 0, Sigma: 2})))
	near.Relative(t, "variance", -16, s.Variance, 1e-15)
	assert.Equal(t, true, math.IsNaN(s.StandardUncertainty) && s.Matters(2))
}

func TestSecondOrderNotFinite(t *testing.T) {
	m := new(Model)
	x := add(m, "x", Normal{Mu: 0, Sigma: 1e200})
	_, err := m.PropagateSecondOrder(m.Multiply(x, x))
	assert.Equal(t, ErrNotFinite, err)
}

// TestMatters: from 5 % on, in either direction.
func TestMatters(t *testing.T) {
	for u, matters := range map[float64]bool{
		20: false, 21: false, 19: false, math.Nextafter(21, 22): true, math.Nextafter(19, 18): true, 0: true,
	} {
		assert.Equal(t, matters, SecondOrder{StandardUncertainty: u}.Matters(20), "%v for 20", u)
	}
	assert.Equal(t, false, SecondOrder{}.Matters(0))
}
