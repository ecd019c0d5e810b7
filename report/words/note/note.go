// Package note has notes and reasons as data: what a result rests on, and why something
// cannot be done or says nothing. Each is a code, what it is about, and arguments; its
// words stand in one table. It knows nothing of the rest, so that all may use it.
package note

import (
	"fmt"
	"minim/report/words/clause"
	"reflect"
	"slices"
	"strings"
)

// Note is one thing to say. The zero value says nothing.
type Note struct {
	// Code names what is said: "assay-not-stated".
	Code string
	// Subject is the name of what it is about: an instrument, a material, a route. It is
	// empty where the code says all.
	Subject string
	// Args are numbers, texts, values with a unit, notes or lists of notes.
	Args []any
}

// Of makes a note. The words of the code say how many arguments there are, the subject
// being the first of them where it is not empty.
func Of(code, subject string, args ...any) Note { return Note{code, subject, args} }

// None reports whether there is nothing to say.
func (n Note) None() bool { return n.Code == "" }

// doubts are the codes of warnings that say that a strength may be quite another than it is said to be.
var doubts = []string{"only-dissolved", "own-few-far", "check-few-far"}

// Doubts are those of some notes that say that a strength may be quite another than it is said to be.
func Doubts(notes []Note) (list []Note) { return WithCodes(notes, doubts) }

// WithCodes are those of some notes that have one of these codes.
func WithCodes(notes []Note, codes []string) (list []Note) {
	for _, n := range notes {
		if slices.Contains(codes, n.Code) {
			list = append(list, n)
		}
	}
	return list
}

// Or is the first of two that says something.
func Or(first, second Note) Note {
	if first.None() {
		return second
	}
	return first
}

// String says it in words. It panics at a code without words, a programmer's mistake.
func (n Note) String() string {
	if n.None() {
		return ""
	}
	text, found := words[n.Code]
	if !found {
		panic("note: no words for " + n.Code)
	}
	var args []any
	if n.Subject != "" {
		args = append(args, n.Subject)
	}
	for _, arg := range n.Args {
		if list, several := arg.([]Note); several {
			arg = strings.Join(Texts(list), ", ")
		}
		args = append(args, arg)
	}
	return fmt.Sprintf(text, args...)
}

// Texts are notes in words.
func Texts(list []Note) []string { return clause.Each(list, Note.String) }

// Contains reports whether a list holds a note.
func Contains(list []Note, n Note) bool {
	return slices.ContainsFunc(list, func(m Note) bool { return reflect.DeepEqual(m, n) })
}

// Add puts notes on a list that it does not hold yet.
func Add(list *[]Note, more ...Note) {
	for _, n := range more {
		if !Contains(*list, n) {
			*list = append(*list, n)
		}
	}
}
