package equipment

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// TestColumnsOfLiquids reads what is known of mixing and evaporating beside an alias; the
// figures are definitions, volatility is common practice, no source.
func TestColumnsOfLiquids(t *testing.T) {
	for name, want := range map[string]float64{"tap water": 0, "Absolute  ethanol": 1, "ethanol 96 % vol": 0.96} {
		liquid, found := FindLiquid(name)
		assert.True(t, found, name)
		assert.Equal(t, want, liquid.Alcohol, name)
		assert.Equal(t, !IsWater(name), liquid.Volatile, name)
	}
	glycerol, _ := FindLiquid("glycerol")
	assert.True(t, math.IsNaN(glycerol.Alcohol))
	assert.False(t, glycerol.Volatile)
	assert.True(t, IsWater("Distilled water"))
	assert.False(t, IsWater(""))
}
