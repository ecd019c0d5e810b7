package uncertainty

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

// Gamma is the gamma distribution with mean Mu and standard deviation Sigma: a
// quantity that cannot be negative and whose spread is stated, such as the
// liquid retained in a vessel.
//
//	shape α = (Mu/Sigma)²,  rate β = Mu/Sigma²
type Gamma struct{ Mu, Sigma float64 }

// Mean is Mu.
func (d Gamma) Mean() float64 { return d.Mu }

// StandardUncertainty is Sigma.
func (d Gamma) StandardUncertainty() float64 { return d.Sigma }

// Variance is Sigma².
func (d Gamma) Variance() float64 { return d.Sigma * d.Sigma }

// Skewness is 2/√α.
func (d Gamma) Skewness() float64 { return 2 * d.Sigma / d.Mu }

// Kurtosis is 3 + 6/α.
func (d Gamma) Kurtosis() float64 { return 3 + float64(6*(d.Sigma/d.Mu)*(d.Sigma/d.Mu)) }

// Support is [0, ∞).
func (Gamma) Support() (low, high float64) { return 0, math.Inf(1) }

// Quantile is the inverse of the distribution function.
func (d Gamma) Quantile(p float64) float64 {
	return distuv.Gamma{Alpha: d.shape(), Beta: d.Mu / d.Sigma / d.Sigma}.Quantile(p)
}

func (d Gamma) shape() float64 { return (d.Mu / d.Sigma) * (d.Mu / d.Sigma) }

func (d Gamma) sound() bool {
	return finite(d.Mu) && finite(d.Sigma) && d.Mu > 0 && d.Sigma > 0 && finite(d.shape()) && d.shape() > 0
}

func (d Gamma) fill(dst []float64, s *source) {
	fillGamma(dst, d.shape(), s)
	for i := range dst {
		dst[i] *= d.Mu
	}
}
