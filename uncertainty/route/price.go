package route

import (
	"cmp"

	"minim/equipment"
	"minim/equipment/benchfile"
	"minim/equipment/quantity"
)

// readPrices reads the prices of the solute and the solvent, in the currency of
// those of the kit.
func (p *Prep) readPrices(root *benchfile.Table) {
	p.Solute.Price = p.readPrice(root.Table("solute"), quantity.Mass)
	p.Solvent.Price = p.readPrice(root.Table("solvent"), quantity.Volume)
}

func (p *Prep) readPrice(t *benchfile.Table, kind quantity.Kind) equipment.Price {
	text := t.Text("price")
	if text == "" {
		return equipment.Price{}
	}
	price, err := equipment.ParseUnitPrice(kind, text)
	if err == nil {
		err = price.SameCurrency(p.Kit.Currency(), "a price of the kit")
	}
	if err == nil {
		err = price.SameCurrency(p.Solute.Price.Currency, "the price of the solute")
	}
	if err != nil {
		t.FailWith("price", err)
		return equipment.Price{}
	}
	return price
}

// Cost of a route: the solute that it uses, and as much solvent as all the liquid
// that it makes. What has no price is not counted; ok is false when neither has
// one, the route cannot be done, or the price is of a mass of solute that is not known.
func (p *Prep) Cost(r *Result) (cost equipment.Price, ok bool) {
	solute, solvent := p.Solute.Price, p.Solvent.Price
	if !r.Possible || !solute.Stated() && !solvent.Stated() || solute.Stated() && !p.CountsMass() {
		return equipment.Price{}, false
	}
	made := min(p.Volume, r.MadeML) + r.LeftOverML
	return equipment.Price{
		Amount:   float64(r.SoluteGrams*solute.Amount) + float64(made*solvent.Amount),
		Currency: cmp.Or(solute.Currency, solvent.Currency),
	}, true
}
