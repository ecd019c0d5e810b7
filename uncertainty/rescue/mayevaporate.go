package rescue

import (
	"slices"

	"minim/equipment"
	"minim/uncertainty/hazards"
	"minim/uncertainty/route"
)

// MayEvaporate reports whether a solution of a prep may be made stronger by letting solvent
// evaporate: the solvent is water, and the solute a solid that stays, either known by its
// name or stated to be one, with hazard words of which none is oxidiser, gives off gas,
// acid, alkali or toxic. A solute that is recognised as anything else by its name is left
// out, and so is one stated to be a solid of which no hazard word is stated.
func MayEvaporate(p *route.Prep) bool {
	if !equipment.IsWater(p.Solvent.Name) {
		return false
	}
	h := hazards.OfSolution{Solution: slices.Clone(p.Solute.Hazards)}
	for _, s := range p.Hazards {
		h.Solution = hazards.Add(h.Solution, s.Words)
	}
	if h.Any("oxidiser", "gas", "acid", "alkali", "toxic") {
		return false
	}
	seen := equipment.Recognise(p.Solute.Name, h.Solution...)
	seen = append(seen, equipment.Recognise(p.Solute.WeighedAs)...)
	if slices.ContainsFunc(seen, func(r equipment.Recognition) bool { return r.Group != equipment.NonVolatile && r.Group != "sugar" }) {
		return false
	}
	return len(seen) > 0 || p.Solute.NonVolatile && !h.Unknown()
}
