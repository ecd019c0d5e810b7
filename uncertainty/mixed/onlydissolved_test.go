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
		assert.True(t, OnlyDissolved(name, ""), name)
	}
	for _, name := range []string{"", "solution", "25 %", "urea", "sodium hydroxide", "sodium hydroxide 98 %", "citric acid", "ammonia water soap", "acetic acid", "glycerol 85 %"} {
		assert.False(t, OnlyDissolved(name, ""), name)
	}
}
