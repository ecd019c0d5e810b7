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

// Nearest returns the word that a mistyped one most likely stands for: equal
// but for case, or nearest by letters added, left out, changed or swapped, at
// most one for three letters. It returns "" when none is near.
func Nearest(word string, among []string) string {
	const most = 64 // bytes; nothing longer is a slip of the keyboard
	if len(word) > most {
		return ""
	}
	best, least := "", 1+len([]rune(word))/3
	for _, candidate := range among {
		if strings.EqualFold(word, candidate) {
			return candidate
		}
		if d := distance([]rune(word), []rune(candidate)); d < least {
			best, least = candidate, d
		}
	}
	return best
}

// distance counts the single letters to add, leave out or change, and the
// neighbours to swap, between two words (optimal string alignment).
func distance(a, b []rune) int {
	rows := make([][]int, len(a)+1)
	for i := range rows {
		rows[i] = make([]int, len(b)+1)
		rows[i][0] = i
	}
	for j := range rows[0] {
		rows[0][j] = j
	}
	for i := 1; i <= len(a); i++ {
		for j := 1; j <= len(b); j++ {
			change := rows[i-1][j-1]
			if a[i-1] != b[j-1] {
				change++
			}
			rows[i][j] = min(change, rows[i-1][j]+1, rows[i][j-1]+1)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				rows[i][j] = min(rows[i][j], rows[i-2][j-2]+1)
			}
		}
	}
	return rows[len(a)][len(b)]
}
