package plan

import "minim/report/words/note"

// missed gathers what several searches have not searched: each once, with the benches
// that it concerns.
type missed []missing

// missing is what was not searched, and on which benches.
type missing struct {
	what note.Note
	on   []note.Note
}

// add takes in what the search on a bench has not searched.
func (m *missed) add(bench note.Note, what []note.Note) {
	for _, w := range what {
		at := m.of(w)
		if !note.Contains(at.on, bench) {
			at.on = append(at.on, bench)
		}
	}
}

// of is the place of what was not searched.
func (m *missed) of(what note.Note) *missing {
	for i := range *m {
		if note.Contains([]note.Note{(*m)[i].what}, what) {
			return &(*m)[i]
		}
	}
	*m = append(*m, missing{what: what})
	return &(*m)[len(*m)-1]
}

// notes are "routes from a stock: with the scale, with the balance".
func (m missed) notes() (list []note.Note) {
	for _, w := range m {
		list = append(list, note.Of("missed-on", "", w.what, w.on))
	}
	return list
}
