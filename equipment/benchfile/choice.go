package benchfile

import (
	"errors"
	"strings"

	"minim/equipment/quantity"
)

// FailWith records the mistake that a parser found in the text at a key.
func (t *Table) FailWith(key string, err error) {
	hint := ""
	message := err.Error()
	if e := (*quantity.Error)(nil); errors.As(err, &e) {
		message, hint = e.Message, e.Hint
	}
	t.Fail(key, message, hint)
}

// FailChoice records that a name is not among those it is chosen from, and
// suggests the nearest or else lists them; also is a further way out, or "".
func (t *Table) FailChoice(key, noun, name string, among []string, also string) {
	message, hint := choice(noun, name, among)
	if also != "" {
		hint += "; " + also
	}
	t.Fail(key, message, hint)
}

// FailAmong is FailChoice of a name that a table of the file should have, one of the kinds
// given; see [Table.FailFor].
func (t *Table) FailAmong(kinds []string, key, noun, name string, among []string) {
	message, hint := choice(noun, name, among)
	t.FailFor(t.file.root, kinds, key, message, hint)
}

// choice says that there is nothing of a name, and what there is.
func choice(noun, name string, among []string) (message, hint string) {
	hint = "there is none to choose from"
	if near := Nearest(name, among); near != "" {
		hint = "perhaps " + quote(near) + " is meant"
	} else if len(among) > 0 {
		hint = "choose from " + strings.Join(among, ", ")
	}
	return "there is no " + noun + " called " + quote(name), hint
}

// Refuse returns a mistake about the file as a whole, whatever else is in it.
func (t *Table) Refuse(message, hint string) *Mistake {
	return t.file.mistake(t.at, message, hint)
}
