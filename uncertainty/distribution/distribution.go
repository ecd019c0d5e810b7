package distribution

import (
	"minim/uncertainty/portable"
	"minim/uncertainty/random"
)

// Distribution is the state of knowledge about an influence, a probability
// distribution in the sense of JCGM 101, clause 6. The distributions of this
// package are plain comparable values: [Normal], [StudentT], [Gamma], [Rectangular],
// the triangle of [Peaked], and what [GammaBelow] cuts off.
type Distribution interface {
	// summary tells where it lies and how it is shaped.
	Summary() Summary
	// widened is a distribution about the same mean whose standard uncertainty is factor
	// times as much, of the same shape; a gamma distribution stays one, and one that is cut
	// off stays cut off there, which moves its mean.
	Widened(factor float64) Distribution
	// sound reports whether the parameters describe a distribution. A spread
	// of zero does, except for a gamma distribution.
	Sound() bool
	// fill draws len(dst) independent values.
	Fill(dst []float64, s *random.Source)
}

// Summary of a distribution.
type Summary struct {
	// Mean is the expectation.
	Mean float64
	// StandardUncertainty is the u that JCGM 100 takes for the quantity: the
	// standard deviation, except for a Student t, where it is the scale.
	StandardUncertainty float64
	// Skewness is the third central moment over the 3/2 power of the
	// variance; NaN where it does not exist.
	Skewness float64
	// Kurtosis is the fourth central moment over the square of the variance,
	// 3 for a normal distribution; +Inf or NaN where it does not exist.
	Kurtosis float64
	// Low and High are the least and the greatest possible value, infinite where
	// there is no bound.
	Low, High float64
}

// SummaryOf is the summary of a distribution.
func SummaryOf(d Distribution) Summary { return d.Summary() }

// bounds reports whether [low, high] is an interval, be it of zero width.
func bounds(low, high float64) bool { return low <= high && portable.IsFinite(high-low) }

// wider are the limits of an interval that is factor times as wide about the same middle.
func wider(low, high, factor float64) (wideLow, wideHigh float64) {
	center := portable.Middle(low, high)
	return center + float64(factor*(low-center)), center + float64(factor*(high-center))
}
