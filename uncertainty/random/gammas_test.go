package random

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty/near"
	"minim/uncertainty/portable"
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
		s := new(Source)
		s.Key(1, 2, 3)
		s.Gammas(x, shape)
		for _, v := range x {
			if !(v > 0 && portable.IsFinite(v)) {
				t.Fatalf("shape %v: draw %v", shape, v)
			}
		}
		s.Students(x, 0, 1, 2*shape)
		for _, v := range x {
			if !portable.IsFinite(v) {
				t.Fatalf("%v degrees of freedom: draw %v", shape, v)
			}
		}
	}
}
