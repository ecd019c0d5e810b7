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

// phi is the apparent specific volume of the solute: stated; or that of the table of stocks at
// the strength of the target, φ = h φ_table + (1 - h)/ρ0 where 1 g of what is counted holds h g
// of what the table counts, and water; or about what the stated density of a stock makes it; or
// rectangular over the assumed range.
func (p *Prep) phi() Estimate {
	if p.Solute.SpecificVolume.Known {
		return p.Solute.SpecificVolume
	}
	if t, found := p.tabledSolute(); found {
		at, holds := t.At(p.targetInTable(t)), t.Holds(p.Solute.As)
		rest := (1 - holds) / p.Solvent.Density.Value
		return Between(float64((at.SpecificVolume-at.Spread)*holds)+rest, float64((at.SpecificVolume+at.Spread)*holds)+rest)
	}
	if phi, s := p.phiOfStock(); s != nil {
		return Between(phi-likeStock, phi+likeStock)
	}
	return assumedPhi
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
func (c *compiler) phi() uncertainty.Node {
	p, solute := c.prep, c.prep.Solute.Name
	assumed := !p.Solute.SpecificVolume.Known
	phi := p.phi()
	if assumed {
		c.notePhi(solute, phi)
	}
	return c.materialBy(uncertainty.Substance, solute, specificVolume, "mL/g", phi, p.groundOfPhi(), assumed)
}

// notePhi says what stands in for the apparent specific volume that is not stated.
func (c *compiler) notePhi(solute string, phi Estimate) {
	d, _ := phi.Distribution.(uncertainty.Rectangular)
	if t, found := c.prep.tabledSolute(); found {
		c.notes.Assume("specific-volume-of-table", solute, quantity.Decimal(d.Low, 2), quantity.Decimal(d.High, 2), t.At(c.prep.targetInTable(t)).Trust)
		return
	}
	if _, s := c.prep.phiOfStock(); s != nil {
		c.notes.Assume("specific-volume-of-stock", solute, quantity.Decimal(d.Low, 2), quantity.Decimal(d.High, 2), s.Name)
		return
	}
	c.notes.Assume("specific-volume", solute)
	c.notes.Remember("range-of-specific-volume", solute)
}

// phiIn is phi in a solution of another strength than the target, in water: it changes by as
// much as in the table of stocks.
func (c *compiler) phiIn(l mixed.Liquid, fraction func(t *equipment.StockSubstance, holds float64) float64) uncertainty.Node {
	phi := c.phi()
	t, found := c.prep.tabledSolute()
	if !found || c.prep.Solute.SpecificVolume.Known || !equipment.IsWater(l.Name) {
		return phi
	}
	holds := t.Holds(c.prep.Solute.As)
	w := 0.0
	if x := fraction(t, holds); x > 0 {
		w = math.Min(1, x)
	}
	change := holds * (t.At(w).SpecificVolume - t.At(c.prep.targetInTable(t)).SpecificVolume)
	if change == 0 {
		return phi
	}
	return c.model.Add(phi, c.model.Constant(change))
}
