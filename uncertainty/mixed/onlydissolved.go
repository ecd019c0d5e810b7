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

// mostAqueous is about the greatest mass fraction that acids of that list are had in (common practice, no
// source: 70 % of perchloric and hydrofluoric acid, 62 % of hydrobromic acid).
const mostAqueous = 0.75

// OnlyDissolved reports whether nobody weighs a substance pure, in a form of it, or in that of its
// table where the form is "": it is known by its name, with or without what bottles say besides, such
// as "25 %" or "solution". From the mass fraction pure on, three quarters of the way from its strongest
// solutions to 1, it would be as good as pure (judgement).
func OnlyDissolved(name, form string) (pure float64, only bool) {
	short, most := withoutBottle(name), mostAqueous
	if !slices.Contains(strings.Split(strings.TrimSpace(aqueous), "\n"), short) {
		s, found := equipment.FindStock(name)
		if !found {
			s, found = equipment.FindStock(short)
		}
		if !found || !slices.Contains(s.OnlyDissolved, cmp.Or(form, s.As)) {
			return 0, false
		}
		most = s.Most() / s.Holds(form)
	}
	return most + float64(0.75*(1-most)), true
}

// Fluid reports whether what is weighed by a name is known to be a liquid, or a solution: a liquid of the
// table, or of the stocks what evaporates, has a table to over 90 %, or is had as a solution alone.
func Fluid(name string) bool {
	_, liquid := equipment.FindLiquid(name)
	s, stock := equipment.FindStock(name)
	_, only := OnlyDissolved(name, "")
	return liquid || only || stock && (s.Volatile || s.Most() > 0.9)
}

// withoutBottle is a name without the words of bottles, signs and numbers.
func withoutBottle(name string) string {
	words := strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return strings.ContainsRune(" \t\u00a0\u202f,;.()[]%", r) })
	return strings.Join(slices.DeleteFunc(words, func(w string) bool {
		return slices.Contains(ofBottles, w) || strings.Trim(w, "0123456789") == ""
	}), " ")
}
