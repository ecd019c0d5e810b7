// Package clause puts sentences together: of parts that may be left out, of one text or
// another, of one thing or several.
package clause

import "fmt"

// List has parts of a sentence, or items of a list, each of which may be left out.
type List []string

// Add says one in the manner of fmt, where it holds.
func (c *List) Add(holds bool, format string, args ...any) {
	if holds {
		*c = append(*c, fmt.Sprintf(format, args...))
	}
}

// Put says a text behind words, where there is a text.
func (c *List) Put(words, text string) { c.Add(text != "", "%s%s", words, text) }

// When is a text where something holds, and nothing where it does not.
func When(holds bool, text string) string { return Either(holds, text, "") }

// Either is the one text or figure where something holds, and the other where it does not.
func Either[T any](holds bool, one, other T) T {
	if holds {
		return one
	}
	return other
}

// Each is a text for each of several things.
func Each[T any](list []T, text func(T) string) (texts []string) {
	for _, of := range list {
		texts = append(texts, text(of))
	}
	return texts
}
