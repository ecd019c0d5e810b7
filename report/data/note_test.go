package data

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/report/words/note"
	"minim/uncertainty/route"
)

// Every note of a route stands in its list of sentences and, in the same order, with its
// code among the notes; a reason has its code beside it.
func TestNotesHaveTheirCodes(t *testing.T) {
	c := compared(t, demoPrep)
	c.Results[5].Notes.Warn("property-lacking", "", "a reason without a subject")
	routes := decoded(t, c)["routes"].([]any)
	seen := 0
	for i := range routes {
		r, got := &c.Results[i], routes[i].(map[string]any)
		var texts []any
		for _, list := range []string{"warnings", "assumed", "from_memory", "not_counted"} {
			texts = append(texts, got[list].([]any)...)
		}
		notes := got["notes"].([]any)
		assert.Len(t, notes, len(texts), r.Route.Name)
		for k := range notes {
			assert.Equal(t, texts[k], notes[k].(map[string]any)["text"])
			seen++
		}
		if r.Reason.None() {
			assert.Nil(t, got["reason_code"])
		} else {
			assert.Equal(t, r.Reason.Code, got["reason_code"])
		}
	}
	assert.Greater(t, seen, 10)
	first := routes[5].(map[string]any)["notes"].([]any)[len(c.Results[5].Notes.Warnings)-1]
	assert.Equal(t, map[string]any{"kind": "warning", "code": "property-lacking", "subject": nil, "text": note.Of("property-lacking", "", "a reason without a subject").String()}, first)
}

// A rung and a route of the prep itself that cannot be made have the code of their reason.
func TestReasonsHaveTheirCodes(t *testing.T) {
	reason := note.Of("property-lacking", "", "no room")
	assert.Equal(t, "property-lacking", lookUp(rung(&route.Rung{Reason: reason}), []string{"reason_code"}))
	assert.Nil(t, lookUp(rung(&route.Rung{}), []string{"reason_code"}))
	assert.Equal(t, "property-lacking", lookUp(own(&route.Result{Route: &route.Route{}, Reason: reason}), []string{"reason_code"}))
}
