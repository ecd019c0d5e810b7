package purchase

import (
	"slices"

	"minim/report/words/note"
)

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
		i := slices.IndexFunc(*m, func(other missing) bool { return note.Contains([]note.Note{other.what}, w) })
		if i < 0 {
			i, *m = len(*m), append(*m, missing{what: w})
		}
		note.Add(&(*m)[i].on, bench)
	}
}

// notes are "routes from a stock: with the scale, with the balance".
func (m missed) notes() (list []note.Note) {
	for _, w := range m {
		list = append(list, note.Of("missed-on", "", w.what, w.on))
	}
	return list
}
