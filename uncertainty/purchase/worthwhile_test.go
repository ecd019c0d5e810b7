package purchase

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty/route"
	"minim/uncertainty/smallbench"
)

// Where the bench is good enough a candidate is worth having that saves a fifth of what is left over; where it is not, one that
// makes it so, or none does and the chance grows by one in a hundred (constructed).
func TestWorthwhile(t *testing.T) {
	b := Purchase{Prep: smallbench.On(t, smallbench.Prep, smallbench.Kit)}
	choice := func(meets bool, leftOver, chance float64) *Choice {
		best := route.Result{LeftOverML: leftOver, Inside: []route.Chance{{Simulated: chance}}}
		return &Choice{Found: true, Meets: meets, Best: best}
	}
	for _, c := range []struct {
		candidate, present *Choice
		worthwhile         bool
	}{
		{choice(true, 7.9, 0.96), choice(true, 10, 0.96), true},
		{choice(true, 8.1, 0.99), choice(true, 10, 0.96), false},
		{choice(true, 12, 0.99), choice(true, 10, 0.96), false},
		{choice(true, 50, 0.96), choice(false, 10, 0.9), true},
		{choice(false, 1, 0.9), choice(true, 10, 0.96), false},
		{choice(false, 50, 0.92), choice(false, 10, 0.9), true},
		{choice(false, 1, 0.905), choice(false, 10, 0.9), false},
	} {
		assert.Equal(t, c.worthwhile, b.worthwhile(c.candidate, c.present), "%v", c)
	}
}
