package route

import (
	"cmp"

	"minim/uncertainty"
)

// inAir is by what a mass weighed in air is greater than the display of a balance shows that
// was adjusted with weights of 8 g/mL:
//
//	(1 - ρa/8000)/(1 - ρa/ρ)
//
// with ρa = 1.2 kg/m³ (the conventional reference of JCGM 101, 9.3.1.2) and its density ρ in
// g/mL.
func inAir(density float64) float64 { return (1 - 0.0012/8.0) / (1 - 0.0012/density) }

// buoyancy multiplies the mass of weighed solute by that, when its density is stated.
func (c *compiler) buoyancy(mass uncertainty.Node) uncertainty.Node {
	density := c.prep.Solute.Density
	if !density.Known {
		c.notes.LeaveOut("buoyancy", c.prep.Solute.Weighed())
		c.unlifted = true
		return mass
	}
	return c.lifted(mass, inAir(density.Value), density.Value, uncertainty.Owner{Kind: uncertainty.Substance, Name: c.prep.Solute.Weighed()})
}

// buoyancyOfSolvent multiplies the mass of weighed solvent by that: of all in a solution, or
// of nothing in it. To correct the solvent alone, and not what is weighed into it, would make
// more of the error and not less, since their densities are more alike than those of the
// solvent and the weights.
func (c *compiler) buoyancyOfSolvent(i int, mass uncertainty.Node) uncertainty.Node {
	if c.unlifted {
		return mass
	}
	return c.lifted(mass, inAir(c.prep.densityOfSolvent()), c.prep.densityOfSolvent(), c.use(i).Step)
}

// buoyancyOfTotal multiplies the total mass of a solution by what holds for so much of solute
// in it, in g as read, with the rest solvent.
func (c *compiler) buoyancyOfTotal(i int, total uncertainty.Node, solute float64) uncertainty.Node {
	if c.unlifted {
		return total
	}
	of := inAir(c.prep.densityOfSolvent())
	share := solute / c.route.Steps[i].Amount
	b := of + float64(share*(inAir(cmp.Or(c.prep.Solute.Density.Value, c.prep.densityOfSolvent()))-of))
	return c.lifted(total, b, c.prep.densityOfSolvent(), c.use(i).Step)
}

// lifted multiplies a mass by a known correction, which is not intended.
func (c *compiler) lifted(mass uncertainty.Node, by, density float64, owner uncertainty.Owner) uncertainty.Node {
	return c.model.Multiply(mass, c.model.Influence(uncertainty.Influence{
		Code: buoyancyOfAir, Owner: owner, Group: uncertainty.Group{Kind: uncertainty.Substance, Name: c.prep.Solute.Weighed()},
		Distribution: uncertainty.Rectangular{Low: by, High: by}, Nominal: 1,
		Ground: uncertainty.Ground{By: byBuoyancy, Figures: [3]float64{density}},
	}))
}
