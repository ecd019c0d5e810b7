package uncertainty

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty/near"
)

// TestAssumedFactor: the spread of what is assumed grows by a factor, of what is
// known it does not (constructed).
func TestAssumedFactor(t *testing.T) {
	for _, d := range []Distribution{
		Normal{1, 2}, StudentT{1, 2, 5}, Gamma{1, 2}, Rectangular{0, 3}, InexactRectangular{0, 3, 0.5}, triangular{-1, 3},
		Trapezoidal{0, 2, 0.5}, Arcsine{0, 2},
	} {
		m := Model{AssumedFactor: 2}
		assumed := m.Influence(Influence{Code: "assumed", Distribution: d, Assumed: true})
		known := m.Influence(Influence{Code: "known", Distribution: d})
		a, err := m.Propagate(assumed, 0.95)
		assert.NoError(t, err)
		k, err := m.Propagate(known, 0.95)
		assert.NoError(t, err)
		near.Relative(t, "mean", d.summary().Mean, a.Value, 1e-14)
		near.Relative(t, "assumed", 2*d.summary().StandardUncertainty, a.StandardUncertainty, 1e-14)
		near.Relative(t, "known", d.summary().StandardUncertainty, k.StandardUncertainty, 1e-14)
	}
}
