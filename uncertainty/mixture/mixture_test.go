package mixture

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/stat/distuv"

	"minim/uncertainty/near"
)

// TestMixtureOfOne: Student's t and a normal contribution, against an integral over the scale
// by another rule (gonum's chi-square density and Gauss-Legendre nodes), for two to seven readings.
func TestMixtureOfOne(t *testing.T) {
	for nu := 1.0; nu <= 6; nu++ {
		for _, share := range []float64{0.01, 0.1, 0.5, 0.9} {
			x := New(1-share, []Scatter{{share, nu}})
			for _, p := range []float64{0.5, 0.9, 0.95, 0.99} {
				h := x.Half(p)
				chi := distuv.ChiSquared{K: nu}
				// with χ² = w², whose density is smooth at 0
				outside := quad.Fixed(func(w float64) float64 {
					v := 1 - share + share*nu/(w*w)
					return 2 * w * chi.Prob(w*w) * math.Erfc(h/math.Sqrt(2*v))
				}, 0, 12, 2000, quad.Legendre{}, 0)
				near.Relative(t, fmt.Sprintf("ν %v, share %v, p %v", nu, share, p), 1-p, outside, 1e-6)
			}
		}
	}
}

// TestMixtureAlone: of one scatter it is Student's t, of none the normal distribution.
func TestMixtureAlone(t *testing.T) {
	one, none := New(0, []Scatter{{4, 3}}), New(4, nil)
	near.Relative(t, "t", 2*3.182446305, one.Half(0.95), 1e-9)
	near.Relative(t, "normal", 2*1.959963985, none.Half(0.95), 1e-9)
	near.Relative(t, "chance of t", 0.95, one.Inside(1, 1-2*3.182446305, 1+2*3.182446305), 1e-9)
}

// TestMixtureOfTwoCauchy: the sum of two t-distributions with one degree of freedom is one
// again, with the sum of the scales (constructed): of two equal ones, k = √2 · 12.706 where the
// Welch-Satterthwaite formula has the 4.303 of two degrees of freedom.
func TestMixtureOfTwoCauchy(t *testing.T) {
	x := New(0, []Scatter{{0.5, 1}, {0.5, 1}})
	near.Relative(t, "k", math.Sqrt2*12.7062047362, x.Half(0.95), 2e-3)
	three := New(0, []Scatter{{1, 1}, {4, 1}, {9, 1}})
	near.Relative(t, "of three", 6*12.7062047362, three.Half(0.95), 2e-3)
	near.Relative(t, "inside", 0.9, three.Inside(0, -6*6.31375151468, 6*6.31375151468), 2e-4)
}
