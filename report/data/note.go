package data

import (
	"minim/equipment"
	"minim/report/words/note"
)

// notes are those of a route in their parts, each with the sentence that says it. Of the kinds
// there are the four that the lists of sentences beside them have. The subject is null where
// the code says all.
func notes(n *equipment.Notes) []object {
	out := []object{}
	for _, of := range []struct {
		kind string
		list []note.Note
	}{{"warning", n.Warnings}, {"assumed", n.Assumed}, {"from_memory", n.FromMemory}, {"not_counted", n.NotCounted}} {
		for _, x := range of.list {
			out = append(out, object{{"kind", of.kind}, {"code", x.Code}, {"subject", orNull(x.Subject)}, {"text", x.String()}})
		}
	}
	return out
}
