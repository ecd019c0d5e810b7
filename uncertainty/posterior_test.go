package uncertainty

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"gonum.org/v1/gonum/stat/distuv"

	"minim/uncertainty/near"
)

// TestGiven holds the closed form against the product of prior and likelihood,
// which is proportional to the density of what is known afterwards.
func TestGiven(t *testing.T) {
	for _, c := range []struct{ sigma, u float64 }{{1, 1}, {1.5, 0.4}, {0.02, 3}} {
		d := given(Normal{Mu: 10, Sigma: c.sigma}, 10.7, c.u)
		ratio := func(x float64) float64 {
			prior := distuv.Normal{Mu: 10, Sigma: c.sigma}.Prob(x)
			likelihood := distuv.Normal{Mu: x, Sigma: c.u}.Prob(10.7)
			return prior * likelihood / distuv.Normal{Mu: d.Mu, Sigma: d.Sigma}.Prob(x)
		}
		for _, z := range []float64{-3, -1, 0.5, 2, 4} {
			near.Relative(t, "ratio", ratio(d.Mu), ratio(d.Mu+z*d.Sigma), 1e-12)
		}
	}
}

// TestGivenTwice: constructed; the order of two measurements makes no difference,
// and equal weights give the mean and u/√2.
func TestGivenTwice(t *testing.T) {
	a := given(given(Normal{Mu: 10, Sigma: 2}, 11, 0.5), 10.4, 0.3)
	b := given(given(Normal{Mu: 10, Sigma: 2}, 10.4, 0.3), 11, 0.5)
	near.Relative(t, "mean", a.Mu, b.Mu, 1e-15)
	near.Relative(t, "u", a.Sigma, b.Sigma, 1e-15)
	even := given(Normal{Mu: 10, Sigma: 2}, 11, 2)
	near.Relative(t, "mean of two", 10.5, even.Mu, 1e-15)
	near.Relative(t, "u of two", math.Sqrt2, even.Sigma, 1e-15)
}

// TestGivenInTheLimit: what is exact is not changed by what is not.
func TestGivenInTheLimit(t *testing.T) {
	assert.Equal(t, Normal{Mu: 11, Sigma: 0}, given(Normal{Mu: 10, Sigma: 2}, 11, 0))
	assert.Equal(t, Normal{Mu: 11, Sigma: 0}, given(Normal{Mu: 10, Sigma: 0}, 11, 0))
	assert.Equal(t, Normal{Mu: 10, Sigma: 0}, given(Normal{Mu: 10, Sigma: 0}, 11, 2))
	vague := given(Normal{Mu: 10, Sigma: 1e9}, 11, 2)
	near.Relative(t, "mean", 11, vague.Mu, 1e-15)
	near.Relative(t, "u", 2, vague.Sigma, 1e-15)
}

func TestGivenPanics(t *testing.T) {
	panics(t, "uncertainty: value NaN with u = 1 and +Inf degrees of freedom", func() { given(Normal{Mu: 0, Sigma: 1}, math.NaN(), 1) })
	panics(t, "uncertainty: value 0 with u = -1 and +Inf degrees of freedom", func() { given(Normal{Mu: 0, Sigma: 1}, 0, -1) })
	panics(t, "uncertainty: value 0 with u = -2 and +Inf degrees of freedom", func() { given(Normal{Mu: 0, Sigma: -2}, 0, 1) })
}
