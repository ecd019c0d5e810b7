package portable

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"gonum.org/v1/gonum/stat/distuv"
)

// TestNormal: against gonum, and the quantile there and back.
func TestNormal(t *testing.T) {
	for _, p := range []float64{1e-300, 1e-30, 1e-12, 1e-6, 0.001, 0.025, 0.07, 0.08, 0.3, 0.4999, 0.5, 0.6, 0.93, 0.975, 0.999999} {
		z := NormalQuantile(p)
		assert.InDelta(t, distuv.UnitNormal.Quantile(p), z, 1e-15+2e-15*math.Abs(z), "quantile at %v", p)
		assert.InEpsilon(t, p, NormalCDF(z), 1e-15*(4+z*z), "there and back at %v", p)
		assert.InEpsilon(t, distuv.UnitNormal.CDF(z), NormalCDF(z), 1e-15*(2+z*z/4), "CDF at %v", z)
	}
	assert.Equal(t, []float64{math.Inf(-1), 0, math.Inf(1)}, []float64{NormalQuantile(0), NormalQuantile(0.5), NormalQuantile(1)})
	for _, p := range []float64{-0.1, 1.1, math.NaN()} {
		assert.True(t, math.IsNaN(NormalQuantile(p)), "quantile at %v", p)
	}
}
