package hazards

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Bottles as they are had (common practice, no source), and what is made of them.
func TestVapours(t *testing.T) {
	for _, test := range []struct {
		name     string
		fraction float64
		want     string
	}{
		{"hydrochloric acid", 0.37, "hydrogen chloride"}, {"HCl", 0.32, "hydrogen chloride"}, {"Hydrochloric acid, fuming", 0.38, "hydrogen chloride"}, {"hydrochloric acid", 0.05, ""},
		{"nitric acid", 0.65, "nitric acid and nitrogen oxides"}, {"HNO3", 0.7, "nitric acid and nitrogen oxides"}, {"nitric acid", 0.1, ""},
		{"ammonia", 0.25, "ammonia"}, {"ammonium hydroxide", 0.33, "ammonia"}, {"ammonia", 0.01, ""},
		{"formalin", 0.37, "formaldehyde"}, {"glacial acetic acid", 0.998, "acetic acid"}, {"vinegar", 0.05, ""}, {"hydrogen peroxide", 0.03, ""},
		{"sulphuric acid", 0.96, ""}, {"ammonium chloride", 1, ""}, {"chlorine", 0.007, "chlorine"},
	} {
		what := ""
		if v := Vapours(test.name); v != nil && v.AtFraction(test.fraction) != nil {
			what = v.AtFraction(test.fraction).What
			assert.Equal(t, "from memory", v.Trust)
		}
		assert.Equal(t, test.want, what, "%s, %v", test.name, test.fraction)
	}
}

// 37 % w/w has 1.1839 g/mL by the table of stocks, 12.0 mol/L; at the limit of 10 %, 1.0476 g/mL, it is 2.87 mol/L.
func TestVapourByStrength(t *testing.T) {
	v := Vapours("hydrochloric acid")
	assert.NotNil(t, v.At(0.37*1.1839, false, ""))
	assert.NotNil(t, v.At(12e-3, true, ""))
	assert.NotNil(t, v.At(2.9e-3, true, ""))
	assert.Nil(t, v.At(2.8e-3, true, ""))
	assert.Nil(t, v.At(0.1e-3, true, ""))
	assert.Equal(t, []string{"H335"}, v.AtFraction(0.2).Phrases)
	assert.Equal(t, []string{"H335", "H314"}, v.AtFraction(0.37).Phrases)
	assert.Nil(t, Vapours("formaldehyde").At(0.1, false, "formalin"), "which holds 3.7 %")
	assert.Equal(t, []string{"H331 of the gas"}, Vapours("sulphur dioxide").AtFraction(0.06).Phrases)
}
