package uncertainty

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty/distribution"
	"minim/uncertainty/near"
)

// TestAssumedFactor: the spread of what is assumed grows by a factor, of what is
// known it does not (constructed).
func TestAssumedFactor(t *testing.T) {
	for _, d := range []Distribution{
		Normal{Mu: 1, Sigma: 2}, StudentT{Mu: 1, Sigma: 2, Nu: 5}, Gamma{Mu: 1, Sigma: 2}, Rectangular{Low: 0, High: 3}, InexactRectangular{0, 3, 0.5}, distribution.Triangular{Low: -1, High: 3},
		Trapezoidal{0, 2, 0.5}, Arcsine{0, 2},
	} {
		m := Model{AssumedFactor: 2}
		assumed := m.Influence(Influence{Code: "assumed", Distribution: d, Assumed: true})
		known := m.Influence(Influence{Code: "known", Distribution: d})
		a, err := m.Propagate(assumed, 0.95)
		assert.NoError(t, err)
		k, err := m.Propagate(known, 0.95)
		assert.NoError(t, err)
		near.Relative(t, "mean", d.Summary().Mean, a.Value, 1e-14)
		near.Relative(t, "assumed", 2*d.Summary().StandardUncertainty, a.StandardUncertainty, 1e-14)
		near.Relative(t, "known", d.Summary().StandardUncertainty, k.StandardUncertainty, 1e-14)
	}
}
