package uncertainty

import (
	"context"
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty/near"
)

// TestMixedAsSimulated: the half-width of first order is that of the simulation where a few
// readings stand beside what is normal, and that of the effective degrees of freedom is not.
func TestMixedAsSimulated(t *testing.T) {
	skipUnderRace(t)
	for _, n := range []float64{2, 3, 4, 6} {
		m := new(Model)
		readings := m.Influence(Influence{Code: "x", Owner: Owner{Name: "p"}, Distribution: StudentT{Mu: 0, Sigma: 0.5, Nu: n - 1}, DegreesOfFreedom: n - 1, Set: Set{Owner: Owner{Name: "p"}, At: 1}})
		sum := m.Add(readings, add(m, "rest", Normal{Mu: 10, Sigma: math.Sqrt(0.75)}))
		a := propagate(t, m, sum, 0.95)
		mc, err := m.Simulate(context.Background(), sum, Settings{Trials: 400_000})
		assert.NoError(t, err)
		mixed := a.Mixed()
		near.Relative(t, fmt.Sprintf("%v readings", n), (mc.Upper-mc.Lower)/2, mixed.ExpandedUncertainty, 0.012)
		near.Relative(t, "U is k u", mixed.ExpandedUncertainty, mixed.CoverageFactor*a.StandardUncertainty, 1e-12)
		if n <= 3 {
			assert.Less(t, a.ExpandedUncertainty, 0.9*mixed.ExpandedUncertainty)
		}
	}
}

// TestMixedOfNoReadings: nothing changes, to the last bit.
func TestMixedOfNoReadings(t *testing.T) {
	m := new(Model)
	a := propagate(t, m, m.Add(add(m, "x", Normal{Mu: 1, Sigma: 2}), add(m, "y", Rectangular{Low: 0, High: 1})), 0.95)
	assert.Equal(t, a, a.Mixed())
}
