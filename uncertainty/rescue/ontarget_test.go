package rescue

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty"
	"minim/uncertainty/route"
	"minim/uncertainty/strengths"
)

// A way aims at the target where it misses it by at most a quarter of the tolerance, and 1 %
// at least; a way that does is better than one that only has less left over (constructed).
func TestOnTarget(t *testing.T) {
	p := &route.Prep{Target: strengths.Strength{Value: 100}, Volume: 10, LeastChance: 0.9}
	way := func(value float64) *route.Result {
		r := &route.Result{Possible: true, Informative: true, MadeML: 10}
		r.Analytic.Value = value
		return r
	}
	for _, c := range []struct {
		half, value float64
		want        bool
	}{
		{0, 100.9, true}, {0, 99.1, true}, {0, 101.1, false}, {0, 98.9, false},
		{2, 100.9, true}, {2, 101.1, false},
		{8, 101.9, true}, {8, 98.1, true}, {8, 102.1, false}, {8, 97.9, false},
	} {
		p.Tolerances = nil
		if c.half > 0 {
			p.Tolerances = []route.Tolerance{{Limits: uncertainty.Limits{Lower: 100 - c.half, Upper: 100 + c.half}}}
		}
		r := &rescuer{prep: p, tightest: 1}
		assert.Equal(t, c.want, r.onTarget(way(c.value)), "%+v", c)
		left := way(100)
		left.LeftOverML = 100
		assert.Equal(t, !c.want, r.better(left, way(c.value)), "%+v", c)
	}
}
