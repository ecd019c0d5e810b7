package uncertainty

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// TestQuoteSwitches exactly at 5 % of U.
func TestQuoteSwitches(t *testing.T) {
	a, mc := Analytic{Value: 10, StandardUncertainty: 1, ExpandedUncertainty: 2}, &MonteCarlo{Mean: 10.1, StandardDeviation: 1.1, Lower: 8.3, Upper: 12.3}
	analytic, simulated := Quoted{8, 12, false, 10, 1}, Quoted{8.3, 12.3, true, 10.1, 1.1}
	for of, want := range map[float64]Quoted{
		0: analytic, 0.05: analytic, math.Nextafter(0.05, 0): analytic, math.Nextafter(0.05, 1): simulated, 1: simulated,
	} {
		for _, agrees := range []bool{true, false} {
			assert.Equal(t, want, Quote(a, mc, CrossCheck{OfExpanded: of, Agrees: agrees}), "%v of U", of)
		}
	}
	a.StandardUncertainty, a.ExpandedUncertainty = 0, 0
	assert.Equal(t, simulated, Quote(a, mc, CrossCheck{}), "U is 0 and the simulation differs")
	assert.Equal(t, Quoted{10, 10, false, 10, 0}, Quote(a, mc, CrossCheck{Agrees: true}), "all is exact")
}

// A simulation that has no mean, of two readings, is quoted with what the model gives at the
// means of all influences (constructed).
func TestQuoteWithoutMean(t *testing.T) {
	q := Quote(Analytic{Value: 10, ExpandedUncertainty: 2}, &MonteCarlo{Mean: math.NaN(), StandardDeviation: math.NaN(), Lower: 1, Upper: 20}, CrossCheck{OfExpanded: 1})
	assert.Equal(t, 10.0, q.Value)
	assert.True(t, math.IsNaN(q.StandardUncertainty))
}
