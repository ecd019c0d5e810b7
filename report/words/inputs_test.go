package words

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty"
)

// What two uses of an input leave over where they cancel is no sensitivity, however it is rounded.
func TestCancelledUses(t *testing.T) {
	a := &uncertainty.Analytic{StandardUncertainty: 0.01}
	assert.Zero(t, cancelled(a, &uncertainty.Contribution{Contribution: -3e-20}, -5e-20))
	assert.InDelta(t, 5e-10, cancelled(a, &uncertainty.Contribution{Contribution: 3e-10}, 5e-10), 0)
}
