package uncertainty

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty/near"
)

// glassAndMore is a model of one influence with assumed shape and one without.
func glassAndMore(factor float64) (*Model, Node) {
	m := &Model{AssumedFactor: factor}
	glass := m.Influence(Influence{Code: "glass", Distribution: Peaked(0.1), Assumed: true, AssumedShape: true})
	other := m.Influence(Influence{Code: "other", Distribution: Normal{Sigma: 0.03}, DegreesOfFreedom: 4})
	return m, m.Add(m.Constant(10), glass, other)
}

// The variance of a rectangle is twice that of the triangle with the same limits (JCGM 100,
// 4.3.7 and 4.3.9). By hand: u² = 0.01/3 + 0.0009 and ν = 4 u⁴/0.0009².
func TestIfRectangular(t *testing.T) {
	m, sum := glassAndMore(0)
	a, err := m.Propagate(sum, 0.95)
	require.NoError(t, err)
	near.Relative(t, "u", math.Sqrt(0.01/6+0.0009), a.StandardUncertainty, 1e-12)
	u := math.Sqrt(0.01/3 + 0.0009)
	near.Relative(t, "rectangular", CoverageFactor(0.95, 4*u*u*u*u/(0.0009*0.0009))*u, a.IfRectangular(), 1e-12)
	near.Relative(t, "assumed", 0.01/6/(0.01/6+0.0009), a.AssumedShare(), 1e-12)
	// The same limits in a model of their own give what is said.
	m = new(Model)
	flat := m.Influence(Influence{Code: "glass", Distribution: PlusMinus(0.1)})
	b, err := m.Propagate(m.Add(flat, m.Influence(Influence{Code: "other", Distribution: Normal{Sigma: 0.03}, DegreesOfFreedom: 4})), 0.95)
	require.NoError(t, err)
	near.Relative(t, "worked out", b.ExpandedUncertainty, a.IfRectangular(), 1e-12)
	assert.Equal(t, b.ExpandedUncertainty, b.IfRectangular(), "nothing of which the shape is assumed")
}

// What is assumed of the shape alone is not doubled: its limits are known.
func TestAssumedFactorOfAShape(t *testing.T) {
	for factor, want := range map[float64]Distribution{0: Peaked(0.1), 0.5: Peaked(0.1), 1: Peaked(0.1), 2: PlusMinus(0.1)} {
		m, sum := glassAndMore(factor)
		a, err := m.Propagate(sum, 0.95)
		require.NoError(t, err)
		for _, line := range a.Budget {
			if line.Code == "glass" {
				assert.Equal(t, want, line.Distribution, factor)
			}
		}
	}
}
