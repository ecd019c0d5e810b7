package uncertainty

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty/near"
)

// TestFactorsNear1 holds the far tail against closed forms: for ν = 1 and 2,
// k = cot(πq) and (1 - 2q)/√(2q(1-q)) with the tail q = (1 - p)/2.
func TestFactorsNear1(t *testing.T) {
	for _, p := range []float64{0.1, 0.5, 0.95, 0.999, 1 - 1e-9, 1 - 1e-12} {
		q := (1 - p) / 2
		near.Relative(t, "ν 1", 1/math.Tan(math.Pi*q), CoverageFactor(p, 1), 1e-7)
		near.Relative(t, "ν 2", (1-2*q)/math.Sqrt(2*q*(1-q)), CoverageFactor(p, 2), 1e-7)
	}
}

func TestFactorBetweenTableRows(t *testing.T) {
	for _, p := range columnsG2() {
		for nu := 1.0; nu < 60; nu++ {
			below, between, above := CoverageFactor(p, nu), CoverageFactor(p, nu+0.3), CoverageFactor(p, nu+1)
			assert.Equal(t, true, below > between && between > above, "t at p %v, ν %v + 0.3", p, nu)
		}
	}
}

// TestFactorApproachesNormal: t = z + (z³ + z)/4ν + O(1/ν²) (Abramowitz and
// Stegun, 26.7.5), with no jump where the normal quantile takes over.
func TestFactorApproachesNormal(t *testing.T) {
	for _, nu := range []float64{1e4, 1e5, 1e6, 1e7, 9.99e7, 1.01e8, 1e12} {
		z := CoverageFactor(0.95, math.Inf(1))
		near.Relative(t, fmt.Sprintf("ν %g", nu), z+(z*z*z+z)/(4*nu), CoverageFactor(0.95, nu), 2e-8)
	}
}

func TestCoverageFactorPanics(t *testing.T) {
	for p, message := range map[float64]string{
		0:    "uncertainty: coverage probability 0 is not between 0 and 1",
		1:    "uncertainty: coverage probability 1 is not between 0 and 1",
		-0.5: "uncertainty: coverage probability -0.5 is not between 0 and 1",
		95:   "uncertainty: coverage probability 95 is not between 0 and 1",
	} {
		panics(t, message, func() { CoverageFactor(p, 5) })
	}
	panics(t, "uncertainty: coverage probability NaN is not between 0 and 1", func() { CoverageFactor(math.NaN(), 5) })
}
