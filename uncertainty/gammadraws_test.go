package uncertainty

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"

	"minim/uncertainty/near"
)

// TestLargeShape: with a shape of 1e12 the deviation is a millionth, and the
// distribution as good as normal.
func TestLargeShape(t *testing.T) {
	const n = 1_000_000
	x := draws(Gamma{Mu: 1, Sigma: 1e-6}, 1, 2, n)
	for i := range x {
		x[i] = (x[i] - 1) * 1e6
	}
	mean, variance := stat.MeanVariance(x, nil)
	near.Absolute(t, "mean", 0, mean, 5/math.Sqrt(n))
	near.Absolute(t, "variance", 1, variance, 5*math.Sqrt(2.0/n))
	near.Absolute(t, "skewness", 0, stat.Skew(x, nil), 5*math.Sqrt(6.0/n))
	near.Absolute(t, "excess kurtosis", 0, stat.ExKurtosis(x, nil), 5*math.Sqrt(24.0/n))
}

// TestSmallShape counts draws above some values and holds the counts within
// five standard deviations of the binomial distribution.
func TestSmallShape(t *testing.T) {
	skipUnderRace(t)
	const n = 1_000_000
	for _, shape := range []float64{0.001, 0.05, 0.3} {
		x := draws(Gamma{Mu: shape, Sigma: math.Sqrt(shape)}, 1, 2, n)
		for _, above := range []float64{1e-200, 1e-50, 1e-9, 1e-3, 0.1, 1, 3} {
			count := 0.0
			for _, v := range x {
				if v > above {
					count++
				}
			}
			p := distuv.Gamma{Alpha: shape, Beta: 1}.Survival(above)
			near.Absolute(t, fmt.Sprintf("shape %v, draws above %v", shape, above), n*p, count, 5*math.Sqrt(n*p*(1-p))+1e-6)
		}
	}
}
