package uncertainty

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"
)

// TestNoiseIsNoCause: what is normal has the interval of first order exactly (closed form), so that whatever few trials
// differ by is their noise: over 60 seeds no cause is named and never the simulated interval quoted, also where the trials
// are but sorted, as those of correlated quantities are, and differ by more than 5 % of U in some seeds. A rectangle, whose
// ends are far from that, has a cause in each.
func TestNoiseIsNoCause(t *testing.T) {
	skipUnderRace(t)
	const coverage = 0.99
	correlated := func() (*Model, Node) {
		m := new(Model)
		a, b := add(m, "a", Normal{Mu: 100, Sigma: 9}), add(m, "b", Normal{Mu: 3, Sigma: 4})
		require.NoError(t, m.Correlate([]Node{a, b}, mat.NewSymDense(2, []float64{1, 0.5, 0.5, 1})))
		return m, m.Add(a, b)
	}
	for name, c := range map[string]struct {
		build func() (*Model, Node)
		cause Cause
		noisy bool
	}{
		"normals":            {func() (*Model, Node) { return sumOf(Normal{Mu: 100, Sigma: 9.4}, Normal{Mu: 3, Sigma: 2}) }, noCause, false},
		"correlated normals": {correlated, noCause, true},
		"a rectangle":        {func() (*Model, Node) { return sumOf(PlusMinus(10), Normal{Mu: 0, Sigma: 1}) }, shaped, false},
	} {
		m, y := c.build()
		a := propagate(t, m, y, coverage)
		noisy := false
		for seed := range uint64(60) {
			mc := simulate(t, m, y, Settings{Trials: fewestTrials, Seed: seed, Coverage: coverage})
			got, err := m.CrossCheck(y, a, &mc)
			require.NoError(t, err)
			assert.Equal(t, c.cause, got.Cause, "%s, seed %d", name, seed)
			assert.Equal(t, c.cause != noCause, Quote(a, &mc, got).Simulated, "%s, seed %d", name, seed)
			noisy = noisy || c.cause == noCause && max(math.Abs(a.Lower()-mc.Lower), math.Abs(a.Upper()-mc.Upper)) > 0.05*a.ExpandedUncertainty
		}
		assert.Equal(t, c.noisy, noisy, "%s: the trials differ in some seed", name)
	}
}

// TestNoiseHidesNoBend: what is off by more than chance has its cause however few the trials.
func TestNoiseHidesNoBend(t *testing.T) {
	skipUnderRace(t)
	for seed := range uint64(20) {
		m, y := comparisonLoss(t, 0.010, 0) // JCGM 101, 9.4
		a := propagate(t, m, y, 0.95)
		mc := simulate(t, m, y, Settings{Trials: fewestTrials, Seed: seed})
		got, err := m.CrossCheck(y, a, &mc)
		require.NoError(t, err)
		assert.Equal(t, curved, got.Cause, seed)
	}
}
