package uncertainty

// Distribution is the state of knowledge about an influence, a probability
// distribution in the sense of JCGM 101, clause 6. The distributions of this
// package are plain comparable values: [Normal], [StudentT], [Gamma],
// [Rectangular], [InexactRectangular], [Trapezoidal], [Triangular] and
// [Arcsine].
type Distribution interface {
	// Mean is the expectation.
	Mean() float64
	// StandardUncertainty is the u that JCGM 100 takes for the quantity: the
	// standard deviation, except for a Student t, where it is the scale.
	StandardUncertainty() float64
	// Variance of the distribution itself; +Inf where it has none.
	Variance() float64
	// Skewness is the third central moment over the 3/2 power of the
	// variance; NaN where it does not exist.
	Skewness() float64
	// Kurtosis is the fourth central moment over the square of the variance,
	// 3 for a normal distribution; +Inf or NaN where it does not exist.
	Kurtosis() float64
	// Support is the least and the greatest possible value, infinite where
	// there is no bound.
	Support() (low, high float64)
	// Quantile is the inverse of the distribution function at 0 < p < 1.
	Quantile(p float64) float64

	// sound reports whether the parameters describe a distribution. A spread
	// of zero does, except for a gamma distribution.
	sound() bool
	// fill draws len(dst) independent values.
	fill(dst []float64, s *source)
}
