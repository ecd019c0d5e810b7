package uncertainty

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"

	"minim/uncertainty/portable"
)

// No command asks for a quantile of a distribution: they are here to test it, and for the
// prior of an [Inspection].

// quantileOf is the inverse of the distribution function at 0 < p < 1.
func quantileOf(d Distribution, p float64) float64 {
	return d.(interface{ quantile(p float64) float64 }).quantile(p)
}

func (d Normal) quantile(p float64) float64 {
	return d.Mu + float64(d.Sigma*portable.NormalQuantile(p))
}

func (d StudentT) quantile(p float64) float64 {
	return d.Mu + float64(d.Sigma*portable.StudentQuantile(p, d.Nu))
}

func (d Gamma) quantile(p float64) float64 {
	return distuv.Gamma{Alpha: d.shape(), Beta: d.Mu / d.Sigma / d.Sigma}.Quantile(p)
}

// quantile of what is left below the limit.
func (d gammaBelow) quantile(p float64) float64 {
	whole := distuv.Gamma{Alpha: d.shape(), Beta: d.Mu / d.Sigma / d.Sigma}
	return min(d.most, whole.Quantile(p*whole.CDF(d.most)))
}

func (d Rectangular) quantile(p float64) float64 { return d.Low + float64(p*(d.High-d.Low)) }

func (d Tabulated) quantile(p float64) float64 {
	t := d.table.Value()
	return t.Quantile(p)
}

func (d triangular) quantile(p float64) float64 {
	width := d.high - d.low
	if p < 0.5 {
		return d.low + float64(width*math.Sqrt(p/2))
	}
	return d.high - float64(width*math.Sqrt((1-p)/2))
}

// mirrored is the quantile of a distribution that is symmetric between two limits, where
// rise is its distance from the lower one for p <= 1/2.
func mirrored(low, high, p float64, rise func(p float64) float64) float64 {
	if p > 0.5 {
		return high - rise(1-p)
	}
	return low + rise(p)
}

// variance is the square of the standard deviation; +Inf where there is none.
func variance(d Distribution) float64 {
	s := standardDeviation(d)
	return s * s
}

// support is the least and the greatest possible value.
func support(d Distribution) (low, high float64) {
	s := d.summary()
	return s.Low, s.High
}
