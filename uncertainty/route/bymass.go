package route

import (
	"fmt"

	"minim/equipment"
	"minim/uncertainty"
)

// weighAliquot weighs out a part of the solution at hand.
func (c *compiler) weighAliquot(i int) error {
	s := &c.route.Steps[i]
	c.settle()
	c.evaporate(i)
	use := c.use(i)
	mass, err := s.Balance.Weigh(use, s.Amount)
	if err != nil {
		return err
	}
	w, density, err := c.byMass(c.current)
	if err != nil {
		return err
	}
	volume := s.Amount / c.model.Intended(density)
	if err := c.drawFrom(volume); err != nil {
		return err
	}
	if c.current.bought {
		c.soluteUsed += s.Amount * c.model.Intended(w)
	}
	c.part, c.zeroed = c.model.Multiply(mass, w), use.Step
	return nil
}

// weighUpTo dilutes by weighing: w = m_solute / m_total, where m_total is read
// from the same zero as the aliquot.
func (c *compiler) weighUpTo(i int) error {
	s := &c.route.Steps[i]
	use := c.use(i)
	amount, zeroed := c.part, c.zeroed
	if c.hasAmount {
		amount, zeroed = c.amount, use.Step
	}
	if c.hasAmount && s.Amount <= c.soluteUsed || !c.hasAmount && s.Amount <= c.route.Steps[i-1].Amount {
		return &equipment.Impossible{Reason: fmt.Sprintf("%s in all is not more than what is already in the vessel", equipment.Grams(s.Amount))}
	}
	total, err := s.Balance.WeighUpTo(use, s.Amount, zeroed)
	if err != nil {
		return err
	}
	c.discard()
	c.model.Name(total, "the total mass on the "+s.Balance.Name)
	return c.becomeByMass(c.model.Divide(amount, total), s.Amount)
}

// byMass returns the mass fraction of a solution, and its density ρ:
//
//	ρ = ρ0 + γ (1 - φ ρ0),  w = γ/ρ
//
// with the density ρ0 of the solvent and the apparent specific volume φ of the
// solute, shared by all solutions of the route.
func (c *compiler) byMass(l *liquid) (w, density uncertainty.Node, err error) {
	m := c.model
	solvent, excess, err := c.densities()
	if err != nil {
		return 0, 0, err
	}
	density = m.Name(m.Add(solvent, m.Multiply(l.concentration, excess)), "the density of the solution")
	if l.hasFraction {
		return l.fraction, density, nil
	}
	return m.Divide(l.concentration, density), density, nil
}

// byVolume is the inverse of byMass: γ = w ρ0 / (1 - w (1 - φ ρ0)).
func (c *compiler) byVolume(w uncertainty.Node) (concentration, density uncertainty.Node, err error) {
	m := c.model
	solvent, excess, err := c.densities()
	if err != nil {
		return 0, 0, err
	}
	rest := m.Name(m.Subtract(m.Constant(1), m.Multiply(w, excess)), "the solvent in the solution")
	density = m.Divide(solvent, rest)
	return m.Multiply(w, density), density, nil
}

// densities appends ρ0 and 1 - φ ρ0.
func (c *compiler) densities() (solvent, excess uncertainty.Node, err error) {
	m, p := c.model, c.prep
	if !p.Solvent.Density.Known {
		return 0, 0, &equipment.Impossible{Reason: "weighing a solution needs the density of " + p.Solvent.Name + ", which the prep does not state"}
	}
	c.notePhi()
	solvent = m.Constant(p.Solvent.Density.Value)
	phi := c.material(p.Solute.Name, "specific volume of the "+p.Solute.Name, "mL/g", p.phi(), !p.Solute.SpecificVolume.Known)
	return solvent, m.Subtract(m.Constant(1), m.Multiply(phi, solvent)), nil
}

func (c *compiler) notePhi() {
	if !c.prep.Solute.SpecificVolume.Known {
		c.notes.Assume(fmt.Sprintf("1 g of %s takes up between -0.15 and 0.9 mL in solution", c.prep.Solute.Name))
	}
}
