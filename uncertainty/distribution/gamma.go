package distribution

import (
	"math"

	"minim/uncertainty/portable"
	"minim/uncertainty/random"
)

// Gamma is the gamma distribution with mean Mu and standard deviation Sigma: a
// quantity that cannot be negative and whose spread is stated, such as the
// liquid retained in a vessel.
//
//	shape α = (Mu/Sigma)²,  rate β = Mu/Sigma²
type Gamma struct{ Mu, Sigma float64 }

// Summary has the skewness 2/√α and the kurtosis 3 + 6/α.
func (d Gamma) Summary() Summary {
	return Summary{
		Mean: d.Mu, StandardUncertainty: d.Sigma, Skewness: 2 * d.Sigma / d.Mu,
		Kurtosis: 3 + float64(6*(d.Sigma/d.Mu)*(d.Sigma/d.Mu)), High: math.Inf(1),
	}
}

func (d Gamma) Widened(factor float64) Distribution { return Gamma{d.Mu, d.Sigma * factor} }

func (d Gamma) Shape() float64 { return float64((d.Mu / d.Sigma) * (d.Mu / d.Sigma)) }

func (d Gamma) Sound() bool {
	return portable.IsFinite(d.Mu) && portable.IsFinite(d.Sigma) && d.Mu > 0 && d.Sigma > 0 && portable.IsFinite(d.Shape()) && d.Shape() > 0
}

func (d Gamma) Fill(dst []float64, s *random.Source) {
	s.Gammas(dst, d.Shape())
	for i := range dst {
		dst[i] *= d.Mu
	}
}
