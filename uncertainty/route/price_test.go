package route

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/equipment"
	"minim/report/words/note"
	"minim/uncertainty/near"
)

// 10 g of solute and 100 mL of liquid, of which 10 mL are made into 100 mL more:
// what is left over was made as well (constructed).
func TestCost(t *testing.T) {
	for _, c := range []struct {
		solute, solvent string
		want            float64
	}{
		{`price = "3.20 EUR/g"`, `price = "18 EUR/L"`, 10*3.2 + 200*0.018 - 10*0.018},
		{`price = "3.20 EUR/g"`, "", 32},
		{"", `price = "0.02 EUR/mL"`, 190 * 0.02},
		{`price = "0 EUR/g"`, "", 0},
	} {
		x := recipe{solute: "name = \"urea\"\n" + c.solute, solvent: "name = \"water\"\n" + c.solvent, steps: weighTen + toMark + takeTen + toMark}
		p := parse(t, exactKit, x.text())
		cost, ok := Cost(p, only(t, p))
		assert.Equal(t, true, ok)
		assert.Equal(t, "EUR", cost.Currency)
		near.Relative(t, c.solute+c.solvent, c.want+1, cost.Amount+1, 1e-12)
	}
}

// A route that makes too little is not charged for what it does not make; one that
// cannot be done, or of which nothing has a price, costs nothing that is known.
func TestCostOfPoorRoutes(t *testing.T) {
	x := recipe{solvent: "name = \"water\"\nprice = \"1 EUR/mL\"", steps: weighTen + toMark}
	p := parse(t, exactKit, x.text())
	p.Volume = 250
	r := only(t, p)
	near.Relative(t, "makes 100 mL of 250 mL", 100, r.MadeML, 1e-12)
	cost, ok := Cost(p, r)
	assert.Equal(t, true, ok)
	near.Relative(t, "cost", 100, cost.Amount, 1e-12)

	_, ok = Cost(p, &Result{Route: p.Routes[0], Reason: note.Of("property-lacking", "", "no")})
	assert.Equal(t, false, ok)
	p.Solvent.Price = equipment.Price{}
	_, ok = Cost(p, r)
	assert.Equal(t, false, ok)
}
