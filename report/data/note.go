package data

import (
	"minim/equipment"
	"minim/report/words/note"
)

// noteJSON is a note in its parts, with the sentence that says it. Of the kinds there are
// the four that the lists of sentences beside it have. The subject is null where the code
// says all.
type noteJSON struct {
	Kind    string  `json:"kind"`
	Code    string  `json:"code"`
	Subject *string `json:"subject"`
	Text    string  `json:"text"`
}

func notesToJSON(n *equipment.Notes) []noteJSON {
	out := []noteJSON{}
	add := func(kind string, notes []note.Note) {
		for _, x := range notes {
			out = append(out, noteJSON{kind, x.Code, orNull(x.Subject), x.String()})
		}
	}
	add("warning", n.Warnings)
	add("assumed", n.Assumed)
	add("from_memory", n.FromMemory)
	add("not_counted", n.NotCounted)
	return out
}
