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

// ofGases are those that a cylinder has.
var ofGases = []string{"gas", "gaseous", "compressed", "liquefied", "liquid"}

// mostAqueous is about the greatest mass fraction that acids of that list are had in (common practice, no
// source: 70 % of perchloric and hydrofluoric acid, 62 % of hydrobromic acid), or that gases are had dissolved in
// (70 % of ethylamine).
const mostAqueous = 0.75

// NotPure says of what is taken out by a name, in a state by itself ("" where that is not stated), why
// nobody takes it pure: as the code of a note, "is-gas" or "only-dissolved", "" for all that may be. It goes
// by the name, with or without what bottles say besides, such as "25 %" or "solution", in a form of it, or in that
// of its table where the form is "". From the mass fraction pure on, three quarters of the way from its strongest
// solutions to 1, it would be as good as pure, and a gas from as much on as is had dissolved (judgement).
func NotPure(name, form, state string) (code string, pure float64) {
	short, dissolved := withoutBottle(name)
	gas := state == "gas" || state != "solid" && isGas(short)
	if slices.Contains(strings.Split(strings.TrimSpace(aqueous), "\n"), short) {
		return onlyDissolved, nearlyPure(mostAqueous)
	}
	s, found := equipment.FindStock(name)
	if !found {
		s, found = equipment.FindStock(short)
	}
	only := found && slices.Contains(s.OnlyDissolved, cmp.Or(form, s.As))
	switch {
	case gas && dissolved:
		return onlyDissolved, mostAqueous
	case only:
		code, pure = onlyDissolved, nearlyPure(s.Most()/s.Holds(form))
	case gas:
		pure = mostAqueous
	}
	if gas {
		code = "is-gas"
	}
	return code, pure
}

const onlyDissolved = "only-dissolved"

// nearlyPure is three quarters of the way from a mass fraction to 1.
func nearlyPure(most float64) float64 { return most + float64(0.75*(1-most)) }

// Fluid reports whether what is weighed by a name, in a state by itself ("" where that is not stated), is known to
// be a liquid, or a solution: stated, a liquid of the table, or of the stocks what evaporates, has a table to over
// 90 %, or is had as a solution alone.
func Fluid(name, state string) bool {
	if state == "solid" || state == "liquid" {
		return state == "liquid"
	}
	_, liquid := equipment.FindLiquid(name)
	s, stock := equipment.FindStock(name)
	only, _ := NotPure(name, "", state)
	return liquid || only != "" || stock && (s.Volatile || s.Most() > 0.9)
}

// withoutBottle is a name without the words of bottles, signs and numbers, and whether one of them says that
// it is a solution.
func withoutBottle(name string) (short string, dissolved bool) {
	words := strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return strings.ContainsRune(" \t\u00a0\u202f,;.()[]%", r) })
	dissolved = slices.ContainsFunc(words, func(w string) bool { return slices.Contains(ofBottles, w) })
	return strings.Join(slices.DeleteFunc(words, func(w string) bool {
		return slices.Contains(ofBottles, w) || slices.Contains(ofGases, w) || strings.Trim(w, "0123456789") == ""
	}), " "), dissolved
}
