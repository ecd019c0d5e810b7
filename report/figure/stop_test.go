package figure

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/report/words/note"
	"minim/uncertainty/hazards"
	"minim/uncertainty/route"
)

// A route that brings together what may not meet is not called impossible.
func TestRoutesNotToBeUsedAreNamed(t *testing.T) {
	c := compare(t, recipe(within8, usual...))
	for i := range c.Results {
		if r := &c.Results[i]; !r.Possible {
			r.Clashes, r.Reason = make([]hazards.Clash, 1), note.Of("may-not-meet", "a", "b")
			assert.Contains(t, strings.Join(hand{}.paragraphs([]*route.Result{r}, nil)[0].lines, " "), "STOP, not to be used: "+r.Route.Name)
		}
	}
	assert.Contains(t, altOfSpread(c), "; not to be used: 1.")
	assert.NotContains(t, altOfSpread(c), "not possible")
}
