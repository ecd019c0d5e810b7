package plan

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/equipment"
	"minim/uncertainty/near"
	"minim/uncertainty/route"
)

// Of 120 mL that are made 100 are wanted, and 30 were left over on the way besides: 150 mL in all
// (constructed).
func TestCost(t *testing.T) {
	p := &route.Prep{Volume: 100, Solvent: route.Solvent{Price: equipment.Price{Amount: 2, Currency: "EUR"}}}
	cost, ok := Cost(p, &route.Result{Possible: true, MadeML: 120, LeftOverML: 50})
	assert.True(t, ok)
	near.Relative(t, "cost", 300, cost.Amount, 1e-12)
	assert.Equal(t, "EUR", cost.Currency)
}
