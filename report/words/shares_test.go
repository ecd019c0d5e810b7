package words

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty"
)

func TestShares(t *testing.T) {
	for x, want := range map[float64]string{0: "0 %", 0.374: "37 %", 1: "100 %", 0.01: "1 %", 0.0099: "under 1 %", -0.0099: "under 1 %", -0.4: "-40 %", 1.3: "130 %"} {
		assert.Equal(t, want, Share(x))
	}
	for x, want := range map[float64]string{0: "0 %", 0.374: "37 %", 0.0067: "0.67 %", 0.0001: "0.01 %", 0.00009: "under 0.01 %", -0.0123: "-1.2 %"} {
		assert.Equal(t, want, fineShare(x))
	}
	assert.Equal(t, "shared", budgetCells(&uncertainty.Contribution{Uses: 2})[2])
}
