package benchfile

import (
	"errors"
	"strings"

	"minim/equipment/quantity"
)

// FailWith records the mistake that a parser found in the text at a key, or [NoSuch].
func (t *Table) FailWith(key string, err error) {
	var e *quantity.Error
	if errors.As(err, &e) {
		t.Fail(key, e.Message, e.Hint)
	} else {
		t.Fail(key, err.Error(), "")
	}
}

// NoSuch says that a name is not among those it is chosen from, and suggests the nearest
// or else lists them.
func NoSuch(noun, name string, among []string) *quantity.Error {
	e := quantity.Error{Message: "there is no " + noun + " called " + quote(name), Hint: "there is none to choose from"}
	if near := Nearest(name, among); near != "" {
		return &quantity.Error{Message: e.Message, Hint: "perhaps " + quote(near) + " is meant"}
	} else if len(among) > 0 {
		return &quantity.Error{Message: e.Message, Hint: "choose from " + strings.Join(among, ", ")}
	}
	return &e
}

// Refuse returns a mistake about the file as a whole, whatever else is in it, with what
// else helps.
func (t *Table) Refuse(message, hint string, help ...Help) *Mistake {
	return t.file.mistake(t.at, message, hint).with(help)
}
