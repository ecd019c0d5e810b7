package mixed

import (
	"cmp"
	_ "embed"
	"slices"
	"strings"

	"minim/equipment"
)

// aqueous lists acids that nobody weighs pure, one to a line, besides those of the table of stocks
// (common practice, no source).
//
//go:embed aqueous.txt
var aqueous string

// ofBottles are words that a bottle has besides the name of what is in it.
var ofBottles = []string{"solution", "aqueous", "aqua", "water", "in", "of", "concentrated", "conc", "dilute", "diluted", "strong", "fuming", "w/w", "w/v", "v/v"}

// OnlyDissolved reports whether nobody weighs a substance pure, in a form of it, or in that of its
// table where the form is "": it is known by its name, with or without what bottles say besides, such
// as "25 %" or "solution".
func OnlyDissolved(name, form string) bool {
	short := withoutBottle(name)
	if slices.Contains(strings.Split(strings.TrimSpace(aqueous), "\n"), short) {
		return true
	}
	s, found := equipment.FindStock(name)
	if !found {
		s, found = equipment.FindStock(short)
	}
	return found && slices.Contains(s.OnlyDissolved, cmp.Or(form, s.As))
}

// withoutBottle is a name without the words of bottles, signs and numbers.
func withoutBottle(name string) string {
	words := strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return strings.ContainsRune(" \t\u00a0\u202f,;.()[]%", r) })
	return strings.Join(slices.DeleteFunc(words, func(w string) bool {
		return slices.Contains(ofBottles, w) || strings.Trim(w, "0123456789") == ""
	}), " ")
}
