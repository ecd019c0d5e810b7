package quantity

import (
	"strings"
	"unicode"
)

// otherSpellings are the other ways in which people write the parts of a unit round its
// slash, and whole units, with what they mean. A capital that could be a prefix is not
// among them: ML is a megalitre.
var otherSpellings = map[string]string{
	"ml": "mL", "ul": "µL", "uL": "µL", "µl": "µL", "l": "L", "cc": "mL", "ccm": "mL", "cm^3": "cm3", "dm3": "L", "dm^3": "L", "dl": "dL",
	"litre": "L", "liter": "L", "litres": "L", "liters": "L",
	"ug": "µg", "mcg": "µg", "gm": "g", "gram": "g", "grams": "g", "gramm": "g",
	"umol": "µmol", "mole": "mol",
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
