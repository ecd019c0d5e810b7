package uncertainty

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"

	"minim/uncertainty/distribution"
	"minim/uncertainty/portable"
)

// No command asks for a quantile of a distribution: they are here to test it, and for the
// prior of an [Inspection].

// quantileOf is the inverse of the distribution function at 0 < p < 1.
func quantileOf(d Distribution, p float64) float64 {
	switch d := d.(type) {
	case Normal:
		return d.Mu + float64(d.Sigma*portable.NormalQuantile(p))
	case StudentT:
		return d.Mu + float64(d.Sigma*portable.StudentQuantile(p, d.Nu))
	case Gamma:
		return distuv.Gamma{Alpha: d.Shape(), Beta: d.Mu / d.Sigma / d.Sigma}.Quantile(p)
	case distribution.CutGamma: // of what is left below the limit
		whole := distuv.Gamma{Alpha: d.Shape(), Beta: d.Mu / d.Sigma / d.Sigma}
		return min(d.Most, whole.Quantile(p*whole.CDF(d.Most)))
	case Rectangular:
		return d.Low + float64(p*(d.High-d.Low))
	case Tabulated:
		return d.Quantile(p)
	case distribution.Triangular:
		width := d.High - d.Low
		if p < 0.5 {
			return d.Low + float64(width*math.Sqrt(p/2))
		}
		return d.High - float64(width*math.Sqrt((1-p)/2))
	}
	return d.(interface{ quantile(p float64) float64 }).quantile(p)
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
	s := d.Summary()
	return s.Low, s.High
}
