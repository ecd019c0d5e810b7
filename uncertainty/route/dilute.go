package route

import (
	"fmt"

	"minim/equipment"
	"minim/uncertainty"
)

// makeUpTo: c = solute / V, up to the mark of a vessel.
func (c *compiler) makeUpTo(i int) error {
	s := &c.route.Steps[i]
	volume, err := s.Measure.Contain(c.use(i), s.Amount)
	if err != nil {
		return err
	}
	if c.current != nil {
		if inside := c.model.Intended(c.volume); inside >= s.Amount {
			return &equipment.Impossible{Reason: fmt.Sprintf("%s are already more than up to the mark at %s",
				equipment.Millilitres(inside), equipment.Millilitres(s.Amount))}
		}
		c.discard()
	}
	c.model.Name(volume, "the volume in the "+s.Measure.Name)
	c.become(c.model.Divide(c.amount, volume), s.Amount)
	return nil
}

// take measures out an aliquot: solute = c a. Aliquots taken one after the
// other from one solution add up.
func (c *compiler) take(i int) error {
	s := &c.route.Steps[i]
	c.settle()
	if err := c.drawFrom(s.Amount); err != nil {
		return err
	}
	a, err := s.Measure.Deliver(c.use(i), s.Amount)
	if err != nil {
		return err
	}
	amount := c.model.Multiply(c.current.concentration, a)
	if c.current.bought {
		c.soluteUsed += c.model.Intended(amount)
	}
	if c.hasAmount {
		a = c.model.Add(c.volume, a)
	}
	c.volume = a
	c.addSolute(amount)
	return nil
}

// drawFrom takes a volume out of the solution at hand.
func (c *compiler) drawFrom(volume float64) error {
	if volume > c.current.left*(1+1e-9) {
		return &equipment.Impossible{Reason: fmt.Sprintf("%s cannot be taken from the %s that are left",
			equipment.Millilitres(volume), equipment.Millilitres(c.current.left))}
	}
	c.current.left -= volume
	return nil
}

// discard counts what is left of the solution at hand, from which an aliquot
// has been taken, and turns to the next.
func (c *compiler) discard() {
	if !c.current.bought {
		c.leftOver += c.current.left
	}
	c.current = nil
}

// add dilutes with a measured volume of solvent: c = solute / (a + b).
func (c *compiler) add(i int) error {
	s := &c.route.Steps[i]
	b, err := s.Measure.Deliver(c.use(i), s.Amount)
	if err != nil {
		return err
	}
	if c.current != nil {
		c.discard()
	}
	c.volume = c.model.Name(c.model.Add(c.volume, b), "the mixed volume")
	return nil
}

// weighAliquot weighs out a part of the solution at hand.
func (c *compiler) weighAliquot(i int) error {
	s := &c.route.Steps[i]
	c.settle()
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
	if c.current != nil {
		c.discard()
	}
	c.model.Name(total, "the total mass on the "+s.Balance.Name)
	w := c.model.Divide(amount, total)
	concentration, density, err := c.byVolume(w)
	if err != nil {
		return err
	}
	c.become(concentration, s.Amount/c.model.Intended(density))
	c.current.fraction, c.current.hasFraction = w, true
	return nil
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

// densities appends ρ0 and 1 - φ ρ0. A φ that is not stated is taken as
// rectangular from -0.15 to 0.9 mL/g, which covers common salts and organic
// solids (from memory).
func (c *compiler) densities() (solvent, excess uncertainty.Node, err error) {
	m, p := c.model, c.prep
	if !p.Solvent.Density.Known {
		return 0, 0, &equipment.Impossible{Reason: "weighing a solution needs the density of " + p.Solvent.Name + ", which the prep does not state"}
	}
	phi := between(-0.15, 0.9)
	if p.Solute.SpecificVolume.Known {
		phi = Estimate{Value: p.Solute.SpecificVolume.Value}
	} else {
		c.notes.Assume(fmt.Sprintf("1 g of %s takes up between -0.15 and 0.9 mL in solution", p.Solute.Name))
	}
	solvent = m.Constant(p.Solvent.Density.Value)
	node := c.material(p.Solute.Name, "specific volume of the "+p.Solute.Name, "mL/g", phi, true)
	return solvent, m.Subtract(m.Constant(1), m.Multiply(node, solvent)), nil
}
