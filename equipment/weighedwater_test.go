package equipment

import (
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty/near"
)

// The 186 Z factors that a maker of pipettes prints after ISO 8655-6, in four decimals, are met
// within 6e-5; and what the same formulas gave when they were worked out elsewhere, to 1e-7. The
// file has its source in its head.
func TestPrintedZFactors(t *testing.T) {
	file, err := os.Open("../testdata/z_factors_printed.csv")
	require.NoError(t, err)
	defer file.Close()
	rows := csv.NewReader(file)
	rows.FieldsPerRecord = -1
	list, err := rows.ReadAll()
	require.NoError(t, err)
	n := 0
	for _, row := range list[2:] {
		var x [4]float64
		for i := range x {
			x[i], err = strconv.ParseFloat(row[i], 64)
			require.NoError(t, err)
		}
		n++
		what := fmt.Sprintf("Z at %v °C and %v hPa", x[0], x[1])
		near.Absolute(t, what+", printed", x[2], zFactor(WaterDensity(x[0]), x[0], x[1], 50), 6e-5)
		near.Absolute(t, what+", recomputed", x[3], zFactor(WaterDensity(x[0]), x[0], x[1], 50), 1e-7)
	}
	assert.Equal(t, 186, n)
}

// How Z answers to what it depends on, worked out elsewhere: +2.0e-4 for 1 °C, +1.05e-6 for 1 hPa,
// -9e-8 for 1 % of humidity, at 20 °C and 1013 hPa where it is 1.0028512; without the air 0.105 % less.
func TestZFactorSensitivities(t *testing.T) {
	z := zFactor(WaterDensity(20), 20, 1013.25, 50)
	near.Absolute(t, "Z", 1.0028512, z, 1e-7)
	near.Absolute(t, "by water", 2.0e-4, (zFactor(WaterDensity(20.5), 20.5, 1013.25, 50)-zFactor(WaterDensity(19.5), 19.5, 1013.25, 50))/z, 1e-5)
	near.Absolute(t, "by pressure", 1.05e-6, (zFactor(WaterDensity(20), 20, 1014.25, 50)-z)/z, 1e-8)
	near.Absolute(t, "by humidity", -9e-8, (zFactor(WaterDensity(20), 20, 1013.25, 51)-z)/z, 5e-9)
	near.Absolute(t, "by the air", 0.00105, (z-1/WaterDensity(20))/z, 1e-5)
}

// A thermometer right to ±1 °C, as a standard uncertainty: 0.012 %; the pressure within 50 hPa: 0.003 %.
func TestWeighedWater(t *testing.T) {
	factor, relative := WeighedWater(20, 1, 0)
	near.Relative(t, "factor", zFactor(WaterDensity(20), 20, 1013.25, 50), factor, 1e-12)
	near.Absolute(t, "relative", math.Hypot(0.00012, 0.00003), relative, 3e-6)
	_, exact := WeighedWater(20, 0, 0)
	near.Absolute(t, "pressure alone", 0.00003, exact, 1e-6)
	// A 10 mL pipette of borosilicate at 23 °C: Z 1.003510, nine decimals recomputed elsewhere.
	pipette, _ := WeighedWater(23, 1, 9.9e-6)
	near.Absolute(t, "at 23 °C", 9.99767/9.963, pipette, 1e-6)
}
