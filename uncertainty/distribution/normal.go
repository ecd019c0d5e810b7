package distribution

import (
	"math"

	"minim/uncertainty/portable"
	"minim/uncertainty/random"
)

// Normal is the Gaussian distribution N(Mu, Sigma²) (JCGM 101, 6.4.7).
type Normal struct{ Mu, Sigma float64 }

func (d Normal) Summary() Summary {
	return Summary{Mean: d.Mu, StandardUncertainty: d.Sigma, Kurtosis: 3, Low: math.Inf(-1), High: math.Inf(1)}
}

func (d Normal) Widened(factor float64) Distribution { return Normal{d.Mu, d.Sigma * factor} }

func (d Normal) Sound() bool {
	return portable.IsFinite(d.Mu) && portable.IsFinite(d.Sigma) && d.Sigma >= 0
}

func (d Normal) Fill(dst []float64, s *random.Source) { s.Normals(dst, d.Mu, d.Sigma) }
