package plan

import (
	"cmp"

	"minim/equipment"
	"minim/uncertainty/route"
)

// Cost of a route: the solute that it uses, and as much solvent as all the liquid
// that it makes. What has no price is not counted; ok is false when neither has
// one, the route cannot be done, or the price is of a mass of solute that is not known.
func Cost(p *route.Prep, r *route.Result) (cost equipment.Price, ok bool) {
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
