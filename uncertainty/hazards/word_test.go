package hazards

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// What is done about a hazard does not hang on how the user words it. (The spellings are
// common practice, no source.)
func TestHazardMeant(t *testing.T) {
	for hazard, stated := range map[string][]string{
		"acid":        {"acid", "Acid", " strong acid ", "acidic"},
		"alkali":      {"alkali", "Alkaline", "strong base", "caustic", "basic"},
		"corrosive":   {"corrosive", "skin-corrosive", "Corrosive 1B", "causes burns", "caustic"},
		"gas":         {"gives off gas", "evolves gas", "releases gases"},
		"oxidiser":    {"oxidiser", "oxidizer", "oxidising", "strongly oxidizing"},
		"toxic":       {"toxic", "very toxic", "TOXIC if swallowed", "poison", "harmful if swallowed", "may cause cancer"},
		"sensitiser":  {"sensitiser", "skin sensitizer", "sensitising"},
		"flammable":   {"flammable", "highly inflammable"},
		"irritant":    {"irritant", "eye irritant", "irritates skin", "serious eye damage"},
		"environment": {"environmentally hazardous", "very toxic to aquatic life"},
		"dust":        {"dust", "fine dust"},
	} {
		for _, s := range stated {
			assert.True(t, Meant(s, hazard), "%q is %s", s, hazard)
		}
	}
	for _, s := range []string{"", "none known", "not corrosive", "non-toxic", "no dust", "placid", "database", "gasket"} {
		for hazard := range spellings {
			assert.False(t, Meant(s, hazard), "%q is not %s", s, hazard)
		}
	}
}
