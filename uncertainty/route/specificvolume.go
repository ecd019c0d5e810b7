package route

import (
	"math"

	"minim/equipment"
	"minim/equipment/quantity"
	"minim/uncertainty"
	"minim/uncertainty/mixed"
)

// assumedPhi is the range of apparent specific volumes in mL/g that covers common salts and
// organic solids (from memory).
var assumedPhi = Between(-0.15, 0.9)

// likeStock is the half-width in mL/g within which the apparent specific volume of a solute is
// taken to be in all solutions what it is in a stock: of those in the table of stocks it
// differs by less than 0.19, of most by less than 0.1.
const likeStock = 0.2

// apparent is the apparent specific volume of the solute in mL/g, and what that rests on.
type apparent struct {
	Estimate
	ground uncertainty.Ground
	// table has it, and at is the row of it for the target; nil where it is known otherwise.
	table *equipment.StockSubstance
	at    equipment.StockDensity
}

// phi is the apparent specific volume of the solute: stated; or that of the table of stocks at
// the strength of the target, φ = h φ_table + (1 - h)/ρ0 where 1 g of what is counted holds h g
// of what the table counts, and water; or about what the stated density of a stock makes it; or
// rectangular over the assumed range.
func (p *Prep) phi() apparent {
	if p.Solute.SpecificVolume.Known {
		return apparent{Estimate: p.Solute.SpecificVolume}
	}
	if t, found := p.tabledSolute(); found {
		at, holds := t.At(p.targetInTable(t)), t.Holds(p.Solute.As)
		rest := (1 - holds) / p.Solvent.Density.Value
		within := Between(float64((at.SpecificVolume-at.Spread)*holds)+rest, float64((at.SpecificVolume+at.Spread)*holds)+rest)
		return apparent{within, uncertainty.Ground{By: byStocks, Of: t.Name, Trust: at.Trust}, t, at}
	}
	if phi, s := p.phiOfStock(); s != nil {
		return apparent{Estimate: Between(phi-likeStock, phi+likeStock), ground: uncertainty.Ground{By: byDensity, Of: s.Name}}
	}
	return apparent{Estimate: assumedPhi, ground: uncertainty.Ground{By: uncertainty.Remembered}}
}

// tabledSolute finds the densities of solutions of the solute in water, where what is weighed
// of it is what is counted.
func (p *Prep) tabledSolute() (t *equipment.StockSubstance, found bool) {
	if !equipment.IsWater(p.Solvent.Name) || !p.Solvent.Density.Known || !p.CountsMass() || p.Solute.Converted() {
		return nil, false
	}
	t, found = equipment.FindStock(p.Solute.Name)
	return t, found
}

// targetInTable is the mass fraction of the target as a table counts it.
func (p *Prep) targetInTable(t *equipment.StockSubstance) float64 {
	holds := t.Holds(p.Solute.As)
	if p.Target.Unit.Basis.Traits().InMass {
		return math.Min(1, p.Target.Value/p.Target.Unit.Per*holds)
	}
	g, err := p.gramsPerML(p.Target)
	if err != nil || p.Target.Unit.Per == 0 {
		return 0
	}
	return t.Fraction(g * holds)
}

// phiOfStock is the apparent specific volume that the stated density of a stock by mass in the
// solvent makes, by ρ = ρ0/(1 - w (1 - φ ρ0)), and that stock; nil where there is none.
func (p *Prep) phiOfStock() (phi float64, s *Stock) {
	solvent := p.Solvent.Density
	if !solvent.Known || !p.CountsMass() {
		return 0, nil
	}
	for _, s := range p.Stocks {
		w := s.Strength.Value / s.Unit.Per
		if !s.Density.Known || !s.Unit.Basis.Traits().InMass || s.Solvent != "" || w < leastWarming || s.Density.Value == 0 {
			continue
		}
		return (1/s.Density.Value - (1-w)/solvent.Value) / w, s
	}
	return 0, nil
}

// phi appends the apparent specific volume of the solute, as it is at the strength of the
// target.
func (c *compiler) phi() uncertainty.Node { return c.appendPhi(c.prep.phi()) }

// appendPhi says what stands in for one that is not stated.
func (c *compiler) appendPhi(phi apparent) uncertainty.Node {
	solute, g := c.prep.Solute.Name, &phi.ground
	d, _ := phi.Distribution.(uncertainty.Rectangular)
	switch low, high := quantity.Decimal(d.Low, 2), quantity.Decimal(d.High, 2); g.By {
	case byStocks:
		c.notes.Assume("specific-volume-of-table", solute, low, high, g.Trust)
	case byDensity:
		c.notes.Assume("specific-volume-of-stock", solute, low, high, g.Of)
	case uncertainty.Remembered:
		c.notes.Assume("specific-volume", solute)
		c.notes.Remember("range-of-specific-volume", solute)
	}
	return c.materialBy(uncertainty.Substance, solute, specificVolume, "mL/g", phi.Estimate, *g, g.By != uncertainty.Stated)
}

// phiIn is phi in a solution of another strength than the target, in water: it changes by as
// much as in the table of stocks.
func (c *compiler) phiIn(l mixed.Liquid, fraction func(t *equipment.StockSubstance, holds float64) float64) uncertainty.Node {
	phi := c.prep.phi()
	node, t := c.appendPhi(phi), phi.table
	if t == nil || !equipment.IsWater(l.Name) {
		return node
	}
	holds := t.Holds(c.prep.Solute.As)
	w := 0.0
	if x := fraction(t, holds); x > 0 {
		w = math.Min(1, x)
	}
	change := holds * (t.At(w).SpecificVolume - phi.at.SpecificVolume)
	if change == 0 {
		return node
	}
	return c.model.Add(node, c.model.Constant(change))
}
