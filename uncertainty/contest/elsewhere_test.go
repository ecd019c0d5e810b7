package contest

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty"
	"minim/uncertainty/route"
)

// Constructed: of 10 within 9 to 14 a route aims elsewhere below 9.75 and above 11, and rounding leads it no farther than to
// 9.5 and 12 before that is looked at, for a mass within half of the nearer way; where there is one limit, the other
// side is free.
func TestElsewhere(t *testing.T) {
	p := &route.Prep{Tolerances: []route.Tolerance{{Limits: uncertainty.Limits{Lower: 9, Upper: 14}}}}
	p.Target.Value = 10
	elsewhere := func(at float64) bool {
		return Elsewhere(p, &route.Result{Possible: true, Informative: true, Intended: 10, Analytic: uncertainty.Analytic{Value: at}})
	}
	for at, want := range map[float64]bool{9.74: true, 9.76: false, 10: false, 10.99: false, 11.01: true} {
		assert.Equal(t, want, elsewhere(at), at)
	}
	for times, want := range map[float64]bool{0.949: false, 0.951: true, 1.199: true, 1.201: false} {
		assert.Equal(t, want, MayAim(p, times), times)
	}
	assert.InDelta(t, 0.05, Room(p), 1e-12)
	p.Tolerances[0].Limits.Upper = math.Inf(1)
	assert.False(t, elsewhere(100))
	assert.True(t, MayAim(p, 10))
	assert.InDelta(t, 0.05, Room(p), 1e-12)
	p.Tolerances = nil
	assert.False(t, elsewhere(100), "without a tolerance nothing is aimed at elsewhere")
}
