package uncertainty

import (
	"fmt"
	"math"
	"testing"

	"minim/uncertainty/near"
)

// TestStudentConformance: constructed, ν = 2 between ±√2 is √(1/2), and the
// chance of lying far out on either side is the same.
func TestStudentConformance(t *testing.T) {
	d := StudentT{Mu: 10, Sigma: 0.5, Nu: 2}
	half := 0.5 * math.Sqrt2
	near.Relative(t, "between", math.Sqrt(0.5), chanceOf(d, Limits{10 - half, 10 + half}), 1e-14)
	near.Relative(t, "above", 0.5-math.Sqrt(0.125), chanceOf(d, Limits{10 + half, noUpper}), 1e-14)
	near.Relative(t, "no limits", 1, chanceOf(d, Limits{noLower, noUpper}), 1e-15)
	far := StudentT{Mu: 0, Sigma: 1, Nu: 9}
	near.Relative(t, "far out", chanceOf(far, Limits{100, 200}), chanceOf(far, Limits{-200, -100}), 1e-15)
}

// TestFarBelow: Φ(-10) as in TestFarTails.
func TestFarBelow(t *testing.T) {
	near.Relative(t, "between", 7.6198530e-24, chanceOf(Normal{Mu: 0, Sigma: 1}, Limits{-20, -10}), 1e-7)
}

func TestConformancePanics(t *testing.T) {
	nan := math.NaN()
	panics(t, "uncertainty: limits NaN to 1 are not numbers", func() { chanceOf(Normal{Mu: 0, Sigma: 1}, Limits{nan, 1}) })
	panics(t, "uncertainty: limits 0 to NaN are not numbers", func() { chanceOf(Normal{Mu: 0, Sigma: 0}, Limits{0, nan}) })
	for _, c := range []struct{ y, u, nu float64 }{
		{nan, 1, 5}, {math.Inf(1), 1, 5}, {0, -1, 5}, {0, nan, 5}, {0, math.Inf(1), 5}, {0, 1, 0}, {0, 1, -1}, {0, 1, nan},
	} {
		message := fmt.Sprintf("uncertainty: value %v with u = %v and %v degrees of freedom", c.y, c.u, c.nu)
		panics(t, message, func() { chanceOf(StudentT{Mu: c.y, Sigma: c.u, Nu: c.nu}, Limits{0, 1}) })
	}
}
