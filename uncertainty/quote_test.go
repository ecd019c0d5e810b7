package uncertainty

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// TestQuoteSwitches exactly at 5 % of U.
func TestQuoteSwitches(t *testing.T) {
	a, mc := Analytic{Value: 10, ExpandedUncertainty: 2}, &MonteCarlo{Lower: 8.3, Upper: 12.3}
	analytic, simulated := Quoted{8, 12, false}, Quoted{8.3, 12.3, true}
	for of, want := range map[float64]Quoted{
		0: analytic, 0.05: analytic, math.Nextafter(0.05, 0): analytic, math.Nextafter(0.05, 1): simulated, 1: simulated,
	} {
		for _, agrees := range []bool{true, false} {
			assert.Equal(t, want, Quote(a, mc, CrossCheck{OfExpanded: of, Agrees: agrees}), "%v of U", of)
		}
	}
	a.ExpandedUncertainty = 0
	assert.Equal(t, simulated, Quote(a, mc, CrossCheck{}), "U is 0 and the simulation differs")
	assert.Equal(t, Quoted{10, 10, false}, Quote(a, mc, CrossCheck{Agrees: true}), "all is exact")
}
