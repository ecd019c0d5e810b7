package search

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty"
	"minim/uncertainty/portable"
)

// A strength outside of the span that is worth so much is less likely to be inside the limits than
// that, however uncertain it is; where the limits are narrow, one at its end is nearly as likely
// (closed forms, constructed).
func TestStrengthsWorth(t *testing.T) {
	j := judge{tolerant: true, limits: uncertainty.Limits{Lower: 0.999, Upper: 1.001}, target: 1, enough: enough}
	most := func(y float64) (chance float64) {
		for i := range 2000 {
			of := uncertainty.Analytic{Value: y, StandardUncertainty: portable.Exp(float64(i)/100 - 14)}
			chance = max(chance, of.ConformanceProbability(j.limits))
		}
		return chance
	}
	for _, worth := range []float64{0.0012, 0.01, 0.1, 0.5} {
		s := j.strengthsWorth(worth)
		for _, y := range []float64{s.low, s.high} {
			assert.Less(t, most(y), worth, "%v", y)
			if worth < 0.05 {
				assert.Greater(t, most(y), 0.97*worth, "%v", y)
			}
		}
	}
	assert.Equal(t, span{0.999, 1.001}, j.strengthsWorth(0.51))
}
