package distribution

import (
	"math"

	"minim/uncertainty/portable"
	"minim/uncertainty/random"
)

// StudentT is the scaled and shifted t-distribution that describes a quantity
// known from a few readings (JCGM 101, 6.4.9): Mu is their mean, Sigma the
// standard deviation that belongs to it, Nu = n - 1 the degrees of freedom.
type StudentT struct{ Mu, Sigma, Nu float64 }

// Summary has Sigma as its u: JCGM 100 takes the scale, and lets the degrees of freedom
// widen the coverage factor. The skewness is 0, or NaN for Nu <= 3; the kurtosis is
// 3 + 6/(Nu - 4), or +Inf for Nu <= 4.
func (d StudentT) Summary() Summary {
	s := Summary{Mean: d.Mu, StandardUncertainty: d.Sigma, Kurtosis: math.Inf(1), Low: math.Inf(-1), High: math.Inf(1)}
	if d.Nu <= 3 {
		s.Skewness = math.NaN()
	}
	if d.Nu > 4 {
		s.Kurtosis = 3 + 6/(d.Nu-4)
	}
	return s
}

func (d StudentT) Widened(factor float64) Distribution { return StudentT{d.Mu, d.Sigma * factor, d.Nu} }

// Sound takes half of Nu, since that is the shape of a gamma distribution.
func (d StudentT) Sound() bool {
	return portable.IsFinite(d.Mu) && portable.IsFinite(d.Sigma) && d.Sigma >= 0 && portable.IsFinite(d.Nu) && d.Nu/2 > 0
}

func (d StudentT) Fill(dst []float64, s *random.Source) { s.Students(dst, d.Mu, d.Sigma, d.Nu) }
