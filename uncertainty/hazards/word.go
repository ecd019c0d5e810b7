package hazards

import (
	"slices"
	"strings"
	"unicode"
)

// spellings are the words by which a hazard is known: each that something is done about.
var spellings = map[string][]string{
	"flammable":   {"flammable", "inflammable"},
	"oxidiser":    {"oxidiser", "oxidizer", "oxidising", "oxidizing", "oxidant"},
	"acid":        {"acid", "acidic"},
	"alkali":      {"alkali", "alkaline", "caustic", "base", "basic"},
	"corrosive":   {"corrosive", "caustic", "burns"},
	"gas":         {"gas", "gases"},
	"dust":        {"dust", "dusty"},
	"sensitiser":  {"sensitiser", "sensitizer", "sensitising", "sensitizing"},
	"toxic":       {"toxic", "poison", "poisonous", "harmful", "carcinogen", "carcinogenic", "mutagenic", "cancer"},
	"irritant":    {"irritant", "irritating", "irritates", "irritation", "damage"},
	"environment": {"environmentally", "environment", "aquatic"},
}

// Meant reports whether a hazard word as it is stated, "very Toxic" or "gives off
// gases", means one of those that something is done about, "toxic" or "gas";
// "non-toxic" and "not corrosive" do not.
func Meant(stated, hazard string) bool {
	words := strings.FieldsFunc(strings.ToLower(stated), func(r rune) bool { return !unicode.IsLetter(r) })
	for i, w := range words {
		denied := i > 0 && slices.Contains([]string{"non", "not", "no"}, words[i-1])
		if !denied && slices.Contains(spellings[hazard], w) {
			return true
		}
	}
	return false
}
