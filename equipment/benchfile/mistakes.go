package benchfile

import (
	"errors"
	"fmt"
	"slices"
	"strings"
)

// mistakes are all that is wrong in a file, in its order. There are two or more; one is
// a *Mistake alone. [errors.As] finds the first, [Told] as many as are told.
type mistakes []*Mistake

// mostTold is how many mistakes of a file are told.
const mostTold = 20

// Error tells them one below the other, as far as they are told.
func (all mistakes) Error() string {
	told, more := Told(all)
	texts := make([]string, len(told), len(told)+1)
	for i, m := range told {
		texts[i] = m.Error()
	}
	if more != "" {
		texts = append(texts, more)
	}
	return strings.Join(texts, "\n")
}

// Told are the mistakes in an error to be told, and "and 3 more mistakes" where there are more.
func Told(err error) (told []*Mistake, more string) {
	all := mistakesIn(err)
	switch rest := len(all) - mostTold; {
	case rest == 1:
		return all[:mostTold], errors.New("and 1 more mistake").Error()
	case rest > 1:
		return all[:mostTold], fmt.Errorf("and %d more mistakes", rest).Error()
	}
	return all, ""
}

// Unwrap returns them one by one.
func (all mistakes) Unwrap() []error {
	list := make([]error, len(all))
	for i, m := range all {
		list[i] = m
	}
	return list
}

// mistakesIn lists the mistakes that an error tells, none where it tells of something else.
func mistakesIn(err error) []*Mistake {
	var all mistakes
	var one *Mistake
	switch {
	case errors.As(err, &all):
		return all
	case errors.As(err, &one):
		return []*Mistake{one}
	}
	return nil
}

// record adds a mistake to the file. Of two at one place the first says it.
func (f *file) record(at span, message, hint string, help ...Help) {
	if slices.Contains(f.marked, at) && !f.isTable(at) {
		return
	}
	f.keep(at, f.mistake(at, message, hint).with(help))
}

// keep adds a mistake that stands at a place.
func (f *file) keep(at span, m *Mistake) {
	f.marked = append(f.marked, at)
	f.mistakes = append(f.mistakes, m)
}

// isTable reports the place of a table, of which several things may be wrong.
func (f *file) isTable(at span) bool {
	return at.from == at.to || f.data[at.from] == '[' || f.data[at.from] == '{'
}

// Sound reports whether no mistake was found so far at the keys, or in what they hold.
// What follows from a value that is wrong is not to be judged: the user would look for
// a second mistake where there is none.
func (t *Table) Sound(keys ...string) bool {
	return t == nil || !slices.ContainsFunc(t.entries, func(e *entry) bool {
		return slices.Contains(keys, e.key) && (t.file.wrong(e.at) || t.file.anyWrong(e.value))
	})
}

// wrong reports a mistake within a place.
func (f *file) wrong(at span) bool {
	return slices.ContainsFunc(f.marked, func(m span) bool { return at.from <= m.from && m.to <= at.to })
}

// anyWrong reports a mistake at a value or in what it holds.
func (f *file) anyWrong(v *value) bool {
	if f.wrong(v.at) || slices.ContainsFunc(v.items, f.anyWrong) {
		return true
	}
	return v.table != nil && slices.ContainsFunc(v.table.entries, func(e *entry) bool { return f.wrong(e.at) || f.anyWrong(e.value) })
}
