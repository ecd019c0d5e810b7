package quantity

import (
	"strings"
	"unicode"
)

// unit is one accepted unit: 10^power base units of its kind.
type unit struct {
	name  string
	kind  Kind
	power int
}

// units lists every accepted unit, for each kind in the order in which a hint
// names them. Prefixes and the litre: SI Brochure, 9th edition (2019), tables
// 7 and 8; 1 L = 1 dm³, so 1 mL = 1 cm³.
var units = []unit{
	{"g", Mass, 0}, {"mg", Mass, -3}, {"µg", Mass, -6}, {"kg", Mass, 3},
	{"mL", Volume, 0}, {"µL", Volume, -3}, {"L", Volume, 3}, {"cm3", Volume, 0},
	{"mm", Length, 0}, {"cm", Length, 1}, {"m", Length, 3},
	{"°C", Temperature, 0},
	{"g/mL", Density, 0}, {"g/cm3", Density, 0}, {"kg/m3", Density, -3}, {"kg/L", Density, 0},
	{"/°C", Expansion, 0}, {"1/°C", Expansion, 0}, {"/K", Expansion, 0}, {"1/K", Expansion, 0},
	{"g/mol", MolarMass, 0}, {"kg/mol", MolarMass, 3},
	{"mL/g", SpecificVolume, 0}, {"cm3/g", SpecificVolume, 0},
	{"min", Duration, 0},
	{"%", Share, -2},
}

// aliases are spellings that are not accepted but foreseen, with what is meant.
var aliases = map[string]string{
	"mcl": "µL", "gr": "g", // a grain, or a gram
	"c": "°C", "k": "°C", "percent": "%",
}

// find returns the unit with the canonical name.
func find(name string) (unit, bool) {
	for _, u := range units {
		if u.name == name {
			return u, true
		}
	}
	return unit{}, false
}

// meant returns the unit of the kind that a refused name stands for, or "".
func meant(kind Kind, name string) string {
	if u, ok := find(aliases[strings.ToLower(name)]); ok && u.kind == kind {
		return u.name
	}
	for _, u := range units {
		if u.kind == kind && strings.EqualFold(foldMicro(u.name), foldMicro(name)) {
			return u.name
		}
	}
	return ""
}

// foldMicro writes the micro sign as u, as "ul" and "UL" are written for µL.
func foldMicro(name string) string { return strings.ReplaceAll(name, "µ", "u") }

// list names the units of a kind: "mL, µL, L or cm3".
func list(kind Kind) string {
	var names []string
	for _, u := range units {
		if u.kind == kind {
			names = append(names, u.name)
		}
	}
	return Series(names, "or")
}

// otherSpellings are the other ways in which people write the parts of a unit round its
// slash, and whole units, with what they mean. A capital that could be a prefix is not
// among them: ML is a megalitre.
var otherSpellings = map[string]string{
	"ml": "mL", "ul": "µL", "uL": "µL", "µl": "µL", "l": "L", "cc": "mL", "ccm": "mL", "cm^3": "cm3", "dm3": "L", "dm^3": "L", "dl": "dL",
	"litre": "L", "liter": "L", "litres": "L", "liters": "L",
	"ug": "µg", "mcg": "µg", "gm": "g", "gram": "g", "grams": "g", "gramm": "g",
	"umol": "µmol", "mole": "mol", "minute": "min", "minutes": "min",
	"C": "°C", "ºC": "°C", "℃": "°C", "° C": "°C", "degC": "°C", "deg C": "°C",
	"K-1": "1/K", "K^-1": "1/K", "°C-1": "1/°C", "°C^-1": "1/°C",
}

// canonical gives a unit its one spelling: single spaces, none round a slash, the micro
// sign U+00B5 for U+03BC, plain digits for raised ones, and each part as it is listed.
func canonical(text string) string {
	text = strings.Join(strings.FieldsFunc(text, isSpace), " ")
	parts := strings.Split(characters.Replace(text), "/")
	for i, part := range parts {
		if meant, ok := otherSpellings[part]; ok {
			parts[i] = meant
		}
	}
	return strings.Join(parts, "/")
}

var characters = strings.NewReplacer(" / ", "/", " /", "/", "/ ", "/", "μ", "µ", "³", "3", "⁻¹", "-1")

// isSpace reports a space of any width, breaking or not; not a tab or a line end.
func isSpace(r rune) bool { return unicode.Is(unicode.Zs, r) }
