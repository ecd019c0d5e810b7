package uncertainty

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty/near"
)

// TestJointByHand: constructed, covariances in closed form: 3² - 4² of a sum and
// a difference, 3² of a sum and one of its terms.
func TestJointByHand(t *testing.T) {
	m := new(Model)
	a, b := add(m, "a", Normal{Mu: 10, Sigma: 3}), add(m, "b", PlusMinus(4*math.Sqrt(3)))
	certain := m.Constant(7)
	j, err := m.PropagateJointly(m.Add(a, b), m.Subtract(a, b), a, certain, m.Multiply(m.Constant(-2), a))
	require.NoError(t, err)
	assert.Equal(t, []float64{10, 10, 10, 7, -20}, j.Values)
	for i, row := range [][]float64{
		{25, -7, 9, 0, -18},
		{-7, 25, 9, 0, -18},
		{9, 9, 9, 0, -18},
		{0, 0, 0, 0, 0},
		{-18, -18, -18, 0, 36},
	} {
		for k, want := range row {
			near.Absolute(t, fmt.Sprint("covariance ", i, k), want, j.Covariance.At(i, k), 1e-13)
		}
	}
	near.Relative(t, "u", 5, j.StandardUncertainty(0), 1e-15)
	near.Relative(t, "r of sum and difference", -7./25, j.Correlation(0, 1), 1e-14)
	near.Relative(t, "r of sum and term", 3./5, j.Correlation(2, 0), 1e-14)
	assert.Equal(t, []float64{1, -1, 0, 0}, []float64{j.Correlation(2, 2), j.Correlation(2, 4), j.Correlation(0, 3), j.Correlation(3, 3)})
}

// TestJointOfCorrelated: with r between the influences u(y_1, y_2) of a sum and
// a difference stays u_a² - u_b², and that of the influences is r u_a u_b.
func TestJointOfCorrelated(t *testing.T) {
	m := new(Model)
	a, b := add(m, "a", Normal{Mu: 10, Sigma: 3}), add(m, "b", Normal{Mu: 0, Sigma: 4})
	require.NoError(t, m.Correlate([]Node{a, b}, pair(-0.25)))
	j, err := m.PropagateJointly(a, b, m.Add(a, b), m.Subtract(a, b))
	require.NoError(t, err)
	near.Relative(t, "r", -0.25, j.Correlation(0, 1), 1e-15)
	near.Relative(t, "sum", math.Sqrt(25-6), j.StandardUncertainty(2), 1e-15)
	near.Relative(t, "sum and difference", -7, j.Covariance.At(2, 3), 1e-14)
	near.Relative(t, "a and sum", 9-3, j.Covariance.At(0, 2), 1e-14)
}

func TestJointErrors(t *testing.T) {
	m := new(Model)
	a := add(m, "a", Normal{Mu: 0, Sigma: 1})
	_, err := m.PropagateJointly(a, m.Divide(m.Constant(1), a))
	assert.Equal(t, standardDivisor("a"), err)
	_, err = m.PropagateJointly(a, m.Multiply(m.Constant(1e200), m.Constant(1e200)))
	assert.Equal(t, ErrNotFinite, err)
	_, err = m.PropagateJointly(m.Multiply(m.Constant(1e200), m.Multiply(m.Constant(1e200), a)))
	assert.Equal(t, ErrNotFinite, err)
	defer func() { assert.Equal(t, true, recover() != nil, "no quantity") }()
	_, _ = m.PropagateJointly()
}
