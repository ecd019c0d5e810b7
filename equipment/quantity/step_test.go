package quantity

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// One step of the last digit that is written (constructed).
func TestStep(t *testing.T) {
	for text, want := range map[string]float64{"0.950 mL": 0.001, "950 µL": 0.001, "10 mL": 1, "1.0e-3 L": 0.1, "-0.5 mL": 0.1} {
		step, err := Step(Volume, text)
		assert.NoError(t, err)
		assert.InEpsilon(t, want, step, 1e-12, text)
	}
	_, err := Step(Volume, "1 g")
	assert.Error(t, err)
	_, err = Step(Volume, "x")
	assert.Error(t, err)
}
