package uncertainty

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"minim/uncertainty/distribution"
	"minim/uncertainty/near"
)

// The square of an influence about its mean has the variance (κ - 1) u⁴, and its cube with
// the slope 1 adds 2 κ u⁴ to u² in the second order: κ is 9/5 of a rectangle, 12/5 of a
// triangle, 3/2 of an arcsine and 3 of a normal distribution (closed forms, constructed).
func TestKurtosisInTheSecondOrder(t *testing.T) {
	for kurtosis, d := range map[float64]Distribution{
		1.8: Rectangular{Low: -1, High: 1}, 2.4: distribution.Triangular{Low: -1, High: 1}, 1.5: Arcsine{-1, 1}, 3: Normal{Mu: 0, Sigma: 0.5},
	} {
		u := d.Summary().StandardUncertainty
		m := new(Model)
		x := add(m, "x", d)
		s, err := m.PropagateSecondOrder(m.Multiply(x, x))
		require.NoError(t, err)
		near.Relative(t, "u of a square", math.Sqrt(kurtosis-1)*u*u, s.StandardUncertainty, 1e-12)
		s, err = m.PropagateSecondOrder(m.Add(x, m.Multiply(x, m.Multiply(x, x))))
		require.NoError(t, err)
		near.Relative(t, "variance of x + x³", 2*kurtosis*math.Pow(u, 4), s.Variance, 1e-12)
	}
}
