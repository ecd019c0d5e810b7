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
		why, _ := NotPure(name, "", "")
		assert.Equal(t, "only-dissolved", why, name)
	}
	for _, name := range []string{"", "solution", "25 %", "urea", "sodium hydroxide", "sodium hydroxide 98 %", "citric acid", "ammonia water soap", "acetic acid", "glycerol 85 %"} {
		why, _ := NotPure(name, "", "")
		assert.Empty(t, why, name)
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
		why, pure := NotPure(name, form, "")
		assert.Equal(t, form == "", why != "", name)
		if why != "" {
			assert.Less(t, bottle, pure, name)
			assert.Less(t, pure, 0.96, name)
		}
	}
}

func TestFluid(t *testing.T) {
	for name, fluid := range map[string]bool{"ammonia": true, "hydrochloric acid 37 %": true, "ethanol": true, "glycerol": true, "sulphuric acid": true, "sodium hydroxide": false, "citric acid": false, "sucrose": false, "dye": false} {
		assert.Equal(t, fluid, Fluid(name, ""), name)
		assert.True(t, Fluid(name, "liquid"), name)
		assert.False(t, Fluid(name, "solid"), name)
	}
}

// Gases by their names as cylinders have them (boiling points from memory), or stated to be; what is had as a
// solution is that alone, and what boils above the temperature of a bench is neither.
func TestGases(t *testing.T) {
	for _, name := range []string{"butane", "n-Butane", "Chlorine", "chlorine gas", "Cl2", "sulphur dioxide", "sulfur dioxide 99.9 %", "SO2", "hydrogen chloride", "compressed ethylene", "1,3-butadiene", "carbon dioxide"} {
		why, pure := NotPure(name, "", "")
		assert.Equal(t, "is-gas", why, name)
		assert.Less(t, pure, 1.0, name)
		why, _ = NotPure(name, "", "solid")
		assert.NotEqual(t, "is-gas", why, "%s: tablets that give it off", name)
	}
	for _, name := range []string{"chlorine water", "sulphur dioxide solution 6 %", "carbon dioxide in water"} {
		why, _ := NotPure(name, "", "")
		assert.Equal(t, "only-dissolved", why, name)
	}
	for _, name := range []string{"ammonia", "formaldehyde", "dye 7", ""} {
		why, _ := NotPure(name, "", "gas")
		assert.Equal(t, "is-gas", why, "stated: %s", name)
	}
	for _, name := range []string{"acetaldehyde", "pentane", "bromine", "ether", "sodium chloride", "calcium hypochlorite", "gas black", "hydrogen peroxide urea", "butanol", "carbon", "iodine"} {
		why, _ := NotPure(name, "", "")
		assert.Empty(t, why, name)
	}
}
