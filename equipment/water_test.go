package equipment

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty/near"
)

// Table of Tanaka et al., Metrologia 38 (2001) 301: 20 and 25 °C as published, 0,
// 10 and 15 °C as published from memory, the rest the same formula evaluated
// elsewhere. Expansion in 1e-4 per °C: the same evaluation, two decimals.
func TestWaterTable(t *testing.T) {
	for _, row := range []struct{ t, density, expansion float64 }{
		{0, 999.8428, -0.68}, {4, 999.9749, 0.00}, {10, 999.7027, 0.88}, {15, 999.1026, 1.51},
		{18, 998.5984, 1.85}, {20, 998.2067, 2.07}, {22, 997.7730, 2.28}, {23, 997.5408, 2.38},
		{25, 997.0470, 2.57}, {30, 995.6488, 3.03}, {35, 994.0326, 3.46}, {40, 992.2152, 3.86},
	} {
		what := fmt.Sprintf("at %v °C", row.t)
		near.Absolute(t, "density "+what, row.density/1000, WaterDensity(row.t), 0.6e-7)
		near.Absolute(t, "expansion "+what, row.expansion*1e-4, WaterExpansion(row.t), 0.51e-6)
	}
}

// Other sources than the formula: an absolute measurement at 16 °C, 998.9468 ±
// 0.0006 kg/m³ (air-free; its formula differs by 0.0009); QUAM's 2.1e-4 per °C; and
// the handbook's 988.04 kg/m³ at 50 °C (from memory), beyond the formula's range.
func TestWaterAgainstOthers(t *testing.T) {
	near.Absolute(t, "density at 16 °C", 0.9989468, WaterDensity(16), 1e-6)
	near.Absolute(t, "expansion at 20 °C", 2.1e-4, WaterExpansion(20), 5e-6)
	near.Absolute(t, "density at 50 °C", 0.98804, WaterDensity(50), 2e-5)
}

// The expansion is the slope of the density; both are quiet at the maximum of
// density, 999.974950 kg/m³ at 3.983035 °C (Tanaka et al.).
func TestWaterExpansionIsTheSlope(t *testing.T) {
	near.Relative(t, "greatest density", 0.999974950, WaterDensity(3.983035), 1e-15)
	assert.Equal(t, 0.0, WaterExpansion(3.983035))
	for c := 0.5; c < 50; c++ {
		slope := (WaterDensity(c+1e-3) - WaterDensity(c-1e-3)) / 2e-3
		near.Absolute(t, fmt.Sprintf("slope at %v °C", c), -slope/WaterDensity(c), WaterExpansion(c), 1e-11)
	}
}

func TestWaterOutOfRange(t *testing.T) {
	assert.PanicsWithValue(t, "equipment: no density of water at 50.1 °C", func() { WaterDensity(50.1) })
	assert.PanicsWithValue(t, "equipment: no density of water at -1 °C", func() { WaterExpansion(-1) })
	assert.PanicsWithValue(t, "equipment: no density of water at NaN °C", func() { WaterDensity(math.NaN()) })
}
