package uncertainty

import (
	"context"
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/stat/distuv"

	"minim/uncertainty/near"
)

// TestMixtureOfOne: Student's t and a normal contribution, against an integral over the scale
// by another rule (gonum's chi-square density and Gauss-Legendre nodes), for two to seven readings.
func TestMixtureOfOne(t *testing.T) {
	for nu := 1.0; nu <= 6; nu++ {
		for _, share := range []float64{0.01, 0.1, 0.5, 0.9} {
			x := NewMixture(1-share, []Scatter{{share, nu}})
			for _, p := range []float64{0.5, 0.9, 0.95, 0.99} {
				h := x.Half(p)
				chi := distuv.ChiSquared{K: nu}
				// with χ² = w², whose density is smooth at 0
				outside := quad.Fixed(func(w float64) float64 {
					v := 1 - share + share*nu/(w*w)
					return 2 * w * chi.Prob(w*w) * math.Erfc(h/math.Sqrt(2*v))
				}, 0, 12, 2000, quad.Legendre{}, 0)
				near.Relative(t, fmt.Sprintf("ν %v, share %v, p %v", nu, share, p), 1-p, outside, 1e-6)
			}
		}
	}
}

// TestMixtureAlone: of one scatter it is Student's t, of none the normal distribution.
func TestMixtureAlone(t *testing.T) {
	one, none := NewMixture(0, []Scatter{{4, 3}}), NewMixture(4, nil)
	near.Relative(t, "t", 2*3.182446305, one.Half(0.95), 1e-9)
	near.Relative(t, "normal", 2*1.959963985, none.Half(0.95), 1e-9)
	near.Relative(t, "chance of t", 0.95, one.ConformanceProbability(1, Limits{1 - 2*3.182446305, 1 + 2*3.182446305}), 1e-9)
}

// TestMixtureOfTwoCauchy: the sum of two t-distributions with one degree of freedom is one
// again, with the sum of the scales (constructed): of two equal ones, k = √2 · 12.706 where the
// Welch-Satterthwaite formula has the 4.303 of two degrees of freedom.
func TestMixtureOfTwoCauchy(t *testing.T) {
	x := NewMixture(0, []Scatter{{0.5, 1}, {0.5, 1}})
	near.Relative(t, "k", math.Sqrt2*12.7062047362, x.Half(0.95), 2e-3)
	three := NewMixture(0, []Scatter{{1, 1}, {4, 1}, {9, 1}})
	near.Relative(t, "of three", 6*12.7062047362, three.Half(0.95), 2e-3)
	near.Relative(t, "inside", 0.9, three.ConformanceProbability(0, Limits{-6 * 6.31375151468, 6 * 6.31375151468}), 2e-4)
}

// TestMixedAsSimulated: the half-width of first order is that of the simulation where a few
// readings stand beside what is normal, and that of the effective degrees of freedom is not.
func TestMixedAsSimulated(t *testing.T) {
	skipUnderRace(t)
	for _, n := range []float64{2, 3, 4, 6} {
		m := new(Model)
		readings := m.Influence(Influence{Code: "x", Owner: Owner{Name: "p"}, Distribution: StudentT{0, 0.5, n - 1}, DegreesOfFreedom: n - 1, Set: Set{Owner: Owner{Name: "p"}, At: 1}})
		sum := m.Add(readings, add(m, "rest", Normal{10, math.Sqrt(0.75)}))
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
	a := propagate(t, m, m.Add(add(m, "x", Normal{1, 2}), add(m, "y", Rectangular{0, 1})), 0.95)
	assert.Equal(t, a, a.Mixed())
}
