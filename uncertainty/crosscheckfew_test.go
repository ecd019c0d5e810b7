package uncertainty

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// The middle of what few readings give is off by the noise of wide tails, and not since anything is
// lopsided (constructed).
func TestWideTailsAreNotLopsided(t *testing.T) {
	for _, nu := range []float64{1, 2, 3} {
		line := Contribution{Contribution: 1, Share: 1}
		line.Distribution, line.DegreesOfFreedom = StudentT{Sigma: 1, Nu: nu}, nu
		a := Analytic{Value: 10, StandardUncertainty: 1, ExpandedUncertainty: 4, CoverageProbability: 0.95, Budget: []Contribution{line}}
		shifted := interval{6.5, 14.5}
		cause, in := causeOf(a, shifted, shifted)
		assert.Equal(t, fewReadings, cause, "%v", nu)
		assert.NotNil(t, in)
	}
}
