package uncertainty

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"

	"minim/uncertainty/near"
)

// TestGammaAcceptance holds the chance of acceptance against the formula of
// Marsaglia and Tsang (2000), and the squeeze below it.
func TestGammaAcceptance(t *testing.T) {
	for _, d := range []float64{2.0 / 3, 0.7, 1, 1.5, 3, 10, 100, 1e4} {
		spread := 1 / (3 * math.Sqrt(d))
		for z := max(-40, -1/spread); z < 40; z += 1.0 / 16 {
			x := float64(z * spread)
			log, v := logAcceptance(x, d), (1+x)*(1+x)*(1+x)
			at := fmt.Sprintf("d = %v, z = %v", d, z)
			near.Equal(t, at, z*z/2+d-d*v+d*math.Log(v), log, 1e-14*d, 1e-12)
			rounding := 1e-15 * (1 + d*math.Abs(x))
			assert.Equal(t, true, squeeze(x, d) <= math.Exp(log)+rounding, "%s: squeeze above the chance", at)
		}
	}
	for _, x := range []float64{-1, -1.5, -100} {
		assert.Equal(t, false, 0 < squeeze(x, 2.0/3), "value %v cannot be", x)
		assert.Equal(t, false, math.Log(1e-300) < logAcceptance(x, 2.0/3), "value %v cannot be", x)
	}
}

// TestExtremeGamma: from almost always zero to almost constant, draws stay
// finite and not negative; so do those of a Student t.
func TestExtremeGamma(t *testing.T) {
	for _, shape := range []float64{5e-324, 1e-300, 1e-6, 1e-3, 0.5, 1, 1e6, 1e12, 1e18, 1e300} {
		x := make([]float64, 100_000)
		s := newSource()
		s.key(1, 2, 3)
		fillGamma(x, shape, s)
		for _, v := range x {
			if !(v > 0 && finite(v)) {
				t.Fatalf("shape %v: draw %v", shape, v)
			}
		}
		for _, v := range draws(StudentT{0, 1, 2 * shape}, 1, 2, 100_000) {
			if !finite(v) {
				t.Fatalf("%v degrees of freedom: draw %v", shape, v)
			}
		}
	}
}

// TestLargeShape: with a shape of 1e12 the deviation is a millionth, and the
// distribution as good as normal.
func TestLargeShape(t *testing.T) {
	const n = 1_000_000
	x := draws(Gamma{1, 1e-6}, 1, 2, n)
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
	const n = 1_000_000
	for _, shape := range []float64{0.001, 0.05, 0.3} {
		x := draws(Gamma{shape, math.Sqrt(shape)}, 1, 2, n)
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
