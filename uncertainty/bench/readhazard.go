package bench

import (
	"slices"

	"minim/equipment/benchfile"
	"minim/uncertainty/route"
)

// readHazard reads the words for a solution of at least a strength.
func (p prepReader) readHazard(t *benchfile.Table) route.Hazard {
	t.Need("from", "words")
	s := p.strength(t, "from")
	h := route.Hazard{From: route.Strength{Value: p.InTargetUnit(s), Unit: p.Target.Unit, Text: s.Text}, Words: hazardWords(t, "words"), Replaces: t.Flag("replaces")}
	if t.Has("words") && len(h.Words) == 0 {
		t.Fail("words", "the list is empty", "write the words of the safety data sheet")
	}
	return h
}

// hazardWords reads a list of words. That none is known cannot stand beside others.
func hazardWords(t *benchfile.Table, key string) []string {
	words := t.Texts(key)
	if len(words) > 1 && slices.ContainsFunc(words, route.NoneKnown) {
		t.Fail(key, "\"none known\" stands beside other words", "leave it out, or the others")
	}
	return words
}
