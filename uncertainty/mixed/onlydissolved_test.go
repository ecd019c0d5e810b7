package mixed

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Names as bottles have them (common practice, no source); what is weighed pure is not among them.
func TestOnlyDissolved(t *testing.T) {
	for _, name := range []string{
		"ammonia", "Ammonia solution 25 %", "ammonia 25 %", "ammonia (25%)", "aqua ammonia", "hydrogen peroxide 3 %", "hydrogen peroxide solution", "aqueous formaldehyde",
		"hydrochloric acid 37 % w/w", "nitric acid, concentrated", "Nitric acid, fuming", "perchloric acid 70 %", "hydrobromic acid", "hydrofluoric acid, 40 %", "bleach",
	} {
		_, only := OnlyDissolved(name, "")
		assert.True(t, only, name)
	}
	for _, name := range []string{"", "solution", "25 %", "urea", "sodium hydroxide", "sodium hydroxide 98 %", "citric acid", "ammonia water soap", "acetic acid", "glycerol 85 %"} {
		_, only := OnlyDissolved(name, "")
		assert.False(t, only, name)
	}
}

// An assay of 99 % is that of the gas, or of the pure acid; one of a bottle is not (bottles: common
// practice, no source: 33 % NH3, 38 % HCl, 90 % fuming nitric acid, 70 % H2O2, 72 % perchloric acid).
func TestAsGoodAsPure(t *testing.T) {
	for name, bottle := range map[string]float64{"ammonia": 0.33, "HCl": 0.38, "nitric acid, fuming": 0.90, "hydrogen peroxide": 0.70, "perchloric acid": 0.72, "formalin": 1} {
		form := ""
		if name == "formalin" {
			name, form = "formaldehyde", "formalin" // which is a solution, and not in the list
		}
		pure, only := OnlyDissolved(name, form)
		assert.Equal(t, form == "", only, name)
		if only {
			assert.Less(t, bottle, pure, name)
			assert.Less(t, pure, 0.96, name)
		}
	}
}

func TestFluid(t *testing.T) {
	for name, fluid := range map[string]bool{"ammonia": true, "hydrochloric acid 37 %": true, "ethanol": true, "glycerol": true, "sulphuric acid": true, "sodium hydroxide": false, "citric acid": false, "sucrose": false, "dye": false} {
		assert.Equal(t, fluid, Fluid(name), name)
	}
}
