package route

import (
	"minim/equipment"
	"minim/uncertainty"
	"minim/uncertainty/mixed"
)

// weighAliquot weighs out a part of the solution at hand.
func (c *compiler) weighAliquot(i int) error {
	s := &c.route.Steps[i]
	c.settle()
	c.evaporate(i, c.current)
	use := c.use(i)
	mass, err := s.Balance.Weigh(use, s.Amount, use.Step, c.pan(i))
	if err != nil {
		return err
	}
	w, density, err := c.byMass(c.current)
	if err != nil {
		return err
	}
	volume := s.Amount / c.model.Intended(density)
	if err := c.draw(c.current, c.model.Divide(mass, density), volume, s.Lost/c.model.Intended(density)); err != nil {
		return err
	}
	c.brings(part{ml: volume, grams: s.Amount, concentration: c.current.concentration, foreign: c.current.medium.Name != c.solvent.Name})
	c.call(mass, massWeighed, c.nameOf(c.current), "g")
	c.masses = append(c.masses, weighed{i, mass})
	c.part, c.partVolume, c.zeroed = c.model.Multiply(mass, w), volume, use.Step
	c.medium = c.current.medium
	return nil
}

// mixInto adds a mass of solvent in g to a volume of the liquid at hand.
func (c *compiler) mixInto(volume, grams float64) {
	if density := c.prep.Solvent.Density; density.Known {
		c.medium = c.medium.With(volume, c.solvent, grams/density.Value)
	}
}

// weighUpTo dilutes by weighing: w = m_solute / m_total, where m_total is read
// from the same zero as the aliquot.
func (c *compiler) weighUpTo(i int) error {
	s := &c.route.Steps[i]
	use := c.use(i)
	amount, zeroed, inside, volume := c.part, c.zeroed, c.route.Steps[i-1].Amount, c.partVolume
	if c.hasAmount {
		amount, zeroed, inside, volume = c.amount, use.Step, c.model.Intended(c.mass), 0
	}
	if c.hasAmount && c.hasVolume {
		volume = c.model.Intended(c.volume)
	}
	if s.Amount <= inside {
		return equipment.Cannot("no-more-in-all", "", equipment.G(s.Amount))
	}
	total, err := s.Balance.Weigh(use, s.Amount, zeroed, c.pan(i))
	if err != nil {
		return err
	}
	if c.hasAmount {
		total = c.buoyancyOfTotal(i, total, inside)
	}
	c.discard()
	c.mixInto(volume, s.Amount-inside)
	if total, err = c.leftOf(i, total, true); err != nil {
		return err
	}
	c.call(total, totalMass, s.Balance.Name, "g")
	return c.becomeByMass(c.model.Divide(amount, total), total)
}

// byMass returns the mass fraction of a solution, and its density ρ:
//
//	ρ = ρ0 + γ (1 - φ ρ0),  w = γ/ρ
//
// with the density ρ0 of the solvent and the apparent specific volume φ of the
// solute, shared by all solutions of the route; of a stock whose own density is known
// that counts.
func (c *compiler) byMass(l *liquid) (w, density uncertainty.Node, err error) {
	m := c.model
	if l.hasDensity && l.hasFraction {
		return l.fraction, l.density, nil
	}
	if l.hasDensity {
		return m.Divide(l.concentration, l.density), l.density, nil
	}
	solvent, excess, err := c.densities(l.medium, func(t *equipment.StockSubstance, holds float64) float64 {
		return t.Fraction(m.Intended(l.concentration) * holds)
	})
	if err != nil {
		return 0, 0, err
	}
	density = c.call(m.Add(solvent, m.Multiply(l.concentration, excess)), densityOfSolution, "", "g/mL")
	if l.hasFraction {
		return l.fraction, density, nil
	}
	return m.Divide(l.concentration, density), density, nil
}

// byVolume is the inverse of byMass: γ = w ρ0 / (1 - w (1 - φ ρ0)).
func (c *compiler) byVolume(w uncertainty.Node, l mixed.Liquid) (concentration, density uncertainty.Node, err error) {
	m := c.model
	solvent, excess, err := c.densities(l, func(_ *equipment.StockSubstance, holds float64) float64 {
		return m.Intended(w) * holds
	})
	if err != nil {
		return 0, 0, err
	}
	rest := c.call(m.Subtract(m.Constant(1), m.Multiply(w, excess)), solventInSolution, "", "")
	density = m.Divide(solvent, rest)
	return m.Multiply(w, density), density, nil
}

// densities appends ρ0 and 1 - φ ρ0, with φ as it is in a solution whose mass fraction a
// function finds, as the table of stocks counts it.
func (c *compiler) densities(l mixed.Liquid, fraction func(t *equipment.StockSubstance, holds float64) float64) (solvent, excess uncertainty.Node, err error) {
	density, err := c.densityOf(l)
	if err != nil {
		return 0, 0, err
	}
	m := c.model
	solvent = c.fixed(density, densityOfLiquid, l.Name, "g/mL", c.groundOfDensity(l, density))
	return solvent, m.Subtract(m.Constant(1), m.Multiply(c.phiIn(l, fraction), solvent)), nil
}
