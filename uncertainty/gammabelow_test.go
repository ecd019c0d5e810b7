package uncertainty

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"gonum.org/v1/gonum/stat/distuv"

	"minim/uncertainty/distribution"
	"minim/uncertainty/near"
)

// below is what lies below a limit of a distribution.
type below struct {
	distuv.Gamma
	most float64
}

func (b below) CDF(x float64) float64 { return min(1, b.Gamma.CDF(x)/b.Gamma.CDF(b.most)) }

// ofGamma reports whether a distribution is a gamma distribution, cut off or not.
func ofGamma(d Distribution) bool {
	switch d.(type) {
	case Gamma, distribution.CutGamma:
		return true
	}
	return false
}

// TestGammaAbove holds the probability of more against gonum's incomplete gamma function.
func TestGammaAbove(t *testing.T) {
	for _, d := range []Gamma{{Mu: 0.4, Sigma: 0.8}, {Mu: 0.1, Sigma: 0.05}, {Mu: 1, Sigma: 1}, {Mu: 0.03, Sigma: 0.0115}, {Mu: 5, Sigma: 0.1}, {Mu: 1, Sigma: 0.002}} {
		whole := distuv.Gamma{Alpha: d.Shape(), Beta: d.Mu / d.Sigma / d.Sigma}
		for _, far := range []float64{-3, -1, 0, 0.5, 2, 5, 8} {
			if x := d.Mu + far*d.Sigma; x > 0 {
				near.Absolute(t, fmt.Sprintf("%v above %v", d, x), whole.Survival(x), d.Above(x), 1e-9)
			}
		}
		assert.Equal(t, []float64{1, 1, 0}, []float64{d.Above(0), d.Above(-1), d.Above(math.Inf(1))})
	}
	tight := Gamma{Mu: 1, Sigma: 1e-4}
	assert.Equal(t, []float64{1, 0.5, 0}, []float64{tight.Above(0.999), tight.Above(1), tight.Above(1.001)})
}

// A limit far above cuts nothing off, and changes no digit.
func TestGammaBelowFarAway(t *testing.T) {
	for _, most := range []float64{3, 10, math.Inf(1)} {
		assert.Equal(t, Distribution(Gamma{Mu: 0.1, Sigma: 0.05}), GammaBelow(0.1, 0.05, most))
	}
	assert.NotEqual(t, Distribution(Gamma{Mu: 0.1, Sigma: 0.05}), GammaBelow(0.1, 0.05, 0.5))
	all, some := draws(Gamma{Mu: 0.1, Sigma: 0.05}, 1, 2, 512), draws(GammaBelow(0.1, 0.05, 0.5), 1, 2, 512)
	assert.Equal(t, all, some, "draws that the limit does not reach")
}

// By hand, an exponential distribution of mean 1 below 1 (constructed, closed form): mean
// (e - 2)/(e - 1), variance 1 - e/(e - 1)².
func TestGammaBelowExponential(t *testing.T) {
	s := GammaBelow(1, 1, 1).Summary()
	near.Relative(t, "mean", (math.E-2)/(math.E-1), s.Mean, 1e-13)
	near.Relative(t, "variance", 1-math.E/((math.E-1)*(math.E-1)), s.StandardUncertainty*s.StandardUncertainty, 1e-12)
	assert.Equal(t, []float64{0, 1}, []float64{s.Low, s.High})
	assert.Equal(t, false, distribution.CutGamma{Gamma: Gamma{Mu: 1, Sigma: 1}, Most: 0.9}.Sound())
}
