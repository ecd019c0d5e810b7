package kits

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment"
	"minim/report/page"
)

// The standard deviation of readings is printed to the nearest, and not as an expanded uncertainty is
// rounded: 0.990 and 1.010 mL have 0.01414 mL.
func TestScatterOfOwnReadings(t *testing.T) {
	j := equipment.Judged{Mark: 1}
	j.Mean, j.S = 1, 0.014142135623730963
	blocks := ownTable([]*equipment.Measure{{Name: "p", Judged: []equipment.Judged{j}}}, nil)
	require.Len(t, blocks, 2)
	assert.Equal(t, "0.0141 mL", blocks[1].(*page.Table).Rows[0].Cells[5])
}

// A mean has the decimals of its readings, and more where it needs them.
func TestMeanHasTheDecimalsOfItsReadings(t *testing.T) {
	assert.Equal(t, "1.000 mL", toDigit("1 mL", 0.001))
	assert.Equal(t, "0.950 mL", toDigit("0.95 mL", 0.001))
	assert.Equal(t, "0.9502 mL", toDigit("0.9502 mL", 0.001))
	assert.Equal(t, "0.9980 mL", toDigit("0.998 mL", 0.000100336)) // of water weighed to 0.0001 g
	assert.Equal(t, "1 mL", toDigit("1 mL", 0))
	assert.Equal(t, "10 g", toDigit("10 g", 1))
}
