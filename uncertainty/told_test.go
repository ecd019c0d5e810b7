package uncertainty

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat/distuv"

	"minim/uncertainty/near"
)

// toldModel is an error that readings told beside a prior, and a use that scatters as they do; s of a
// single reading is 1.
func toldModel(prior Prior, mean, n float64) (m *Model, out Node) {
	m = new(Model)
	nu := n - 1
	told := prior.Given(Measured{Mean: mean, Scale: 1 / math.Sqrt(n), Nu: nu, OfSet: true})
	piece := Owner{Kind: Instrument, Name: "p"}
	set := Set{Owner: piece, At: 1}
	e := m.Influence(Influence{Code: "error", Owner: piece, Distribution: told, DegreesOfFreedom: nu, Set: set})
	use := m.Influence(Influence{Code: "use", Owner: piece, Distribution: StudentT{Sigma: 1, Nu: nu}, DegreesOfFreedom: nu, Set: set})
	return m, m.Add(e, use)
}

// TestPosteriorAndScatterHaveOneScale: without a prior to speak of the mean and a use together
// are Student's t with s √(1 + 1/n), simulated as well as by the law of propagation.
func TestPosteriorAndScatterHaveOneScale(t *testing.T) {
	skipUnderRace(t)
	for _, n := range []float64{4, 6} {
		m, out := toldModel(Prior{Of: PlusMinus(4000)}, 0.5, n)
		half := math.Sqrt(1+1/n) * distuv.StudentsT{Sigma: 1, Nu: n - 1}.Quantile(0.975)
		a, err := m.Propagate(out, 0.95)
		require.NoError(t, err)
		near.Relative(t, "U", half, a.ExpandedUncertainty, 1e-3)
		near.Relative(t, "ν", n-1, a.DegreesOfFreedom, 1e-6)
		mixed := a.Mixed()
		near.Relative(t, "mixed", half, mixed.ExpandedUncertainty, 1e-3)
		mc, err := m.Simulate(context.Background(), out, Settings{Trials: 1_000_000, Seed: 1, Coverage: 0.95})
		require.NoError(t, err)
		near.Absolute(t, "lower", 0.5-half, mc.Lower, 0.012*half)
		near.Absolute(t, "upper", 0.5+half, mc.Upper, 0.012*half)
	}
}

// TestPosteriorWithinItsPrior: with a prior that counts, the interval is between that of Bayes' theorem
// for error and σ together, which is worked out on a grid here (constructed), and a third more, since σ is
// not told by the prior. What is drawn of the error by itself is its table.
func TestPosteriorWithinItsPrior(t *testing.T) {
	skipUnderRace(t)
	for _, c := range []struct{ limit, mean, n float64 }{{0.6, 0.3, 4}, {0.2, 0.5, 4}, {1.5, -1.2, 5}, {0.1, 0, 4}} {
		m, out := toldModel(Prior{Of: PlusMinus(c.limit)}, c.mean, c.n)
		settings := Settings{Trials: 1_000_000, Seed: 1, Coverage: 0.95}
		mc, err := m.Simulate(context.Background(), out, settings)
		require.NoError(t, err)
		wide := jointly(c.limit, c.mean, c.n, 0.975) - jointly(c.limit, c.mean, c.n, 0.025)
		a, err := m.Propagate(out, 0.95)
		require.NoError(t, err)
		mixed := a.Mixed()
		for _, w := range []float64{mc.Upper - mc.Lower, 2 * mixed.ExpandedUncertainty} {
			assert.True(t, w > 0.97*wide && w < 1.35*wide, "%+v: %v of %v", c, w, wide)
		}
		near.Relative(t, "agrees", mc.Upper-mc.Lower, 2*mixed.ExpandedUncertainty, 0.1)
		e := m.known[m.influences[0].Identity()]
		alone, err := m.Simulate(context.Background(), e, settings)
		require.NoError(t, err)
		d := m.influences[0].Distribution.(Tabulated)
		near.Relative(t, "SD", d.Deviation(), alone.StandardDeviation, 2e-3)
		near.Absolute(t, "lower", d.Quantile(0.025), alone.Lower, 0.01*d.Deviation())
		near.Absolute(t, "upper", d.Quantile(0.975), alone.Upper, 0.01*d.Deviation())
	}
}

// jointly is a quantile of error + use, of a rectangular prior within a limit, n readings with a mean
// and s = 1, and 1/σ as the prior of σ.
func jointly(limit, mean, n, p float64) float64 {
	var es, sigmas, weights []float64
	sum := 0.0
	for i := range 60 {
		e := limit * (2*(float64(i)+0.5)/60 - 1)
		for k := range 400 {
			sigma := math.Exp(-2 + 7*(float64(k)+0.5)/400)
			w := math.Exp(-n*math.Log(sigma) - ((n-1)+n*(mean-e)*(mean-e))/(2*sigma*sigma))
			es, sigmas, weights, sum = append(es, e), append(sigmas, sigma), append(weights, w), sum+w
		}
	}
	low, high := -60.0, 60.0
	for range 40 {
		mid := (low + high) / 2
		below := 0.0
		for i, w := range weights {
			below += w * distuv.UnitNormal.CDF((mid-es[i])/sigmas[i])
		}
		if below < p*sum {
			low = mid
		} else {
			high = mid
		}
	}
	return (low + high) / 2
}
