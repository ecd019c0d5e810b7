package bench

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty/route"
)

// A batch stands aside while a solution is made for it, and until it is taken up again.
func TestTurnedAway(t *testing.T) {
	take, makeUp, all, strengthen := route.Step{Verb: route.Take, From: 2}, route.Step{Verb: route.MakeUpTo}, route.Step{Verb: route.TakeAll, From: 4}, route.Step{Verb: route.Strengthen, From: 6}
	for n, away := range []bool{false, true, true, false, false} {
		assert.Equal(t, away, turnedAway([]route.Step{take, makeUp, all, strengthen}[:n]), n)
	}
	assert.False(t, turnedAway([]route.Step{{Verb: route.TakeAll}, strengthen}), "it was never left")
}
