package route

import (
	"math"

	"minim/equipment"
	"minim/uncertainty"
)

// weigh adds solute = (m b - left) assay form.
func (c *compiler) weigh(i int) error {
	s, use := &c.route.Steps[i], c.use(i)
	mass, err := c.onBalance(i, use)
	if err != nil {
		return err
	}
	mass = c.buoyancy(mass)
	switch {
	case s.LeftBehind.Value > 0:
		mass = c.model.Subtract(mass, s.Balance.LeftBehind(use, s.LeftBehind.Value))
	case !s.WeighedBack && !s.LeftBehind.Known:
		c.notes.LeaveOut("what stays on the weighing boat")
	}
	c.masses = append(c.masses, weighed{i, mass})
	c.soluteUsed += s.Amount
	c.addSolute(c.pure(mass))
	return nil
}

// onBalance weighs on a zeroed boat, or between a tare and a gross reading, of
// which the tare may be the gross reading of the step before.
func (c *compiler) onBalance(i int, use equipment.Use) (uncertainty.Node, error) {
	s := &c.route.Steps[i]
	if !s.SeparateTare {
		return s.Balance.Weigh(use, s.Amount)
	}
	if i > 0 {
		before := &c.route.Steps[i-1]
		if before.SeparateTare && before.Balance == s.Balance && before.Piece == s.Piece {
			return s.Balance.WeighBetween(use, s.Amount, c.use(i-1).Step, before.Amount)
		}
	}
	return s.Balance.WeighBetween(use, s.Amount, use.Step+", tare", 0)
}

// pure is the mass of the substance that the strength counts.
func (c *compiler) pure(mass uncertainty.Node) uncertainty.Node {
	solute := &c.prep.Solute
	assay := solute.Assay
	if !assay.Known {
		c.notes.LeaveOut("impurity of the " + solute.Name + " (assay not stated)")
		assay.Value = 1
	}
	amount := c.model.Multiply(mass, c.property("assay", "", assay))
	if solute.FormFactor != 1 {
		amount = c.model.Multiply(amount, c.model.Constant(solute.FormFactor))
	}
	return amount
}

// buoyancy multiplies a mass by (1 - ρa/8000)/(1 - ρa/ρ) with ρa = 1.2 kg/m³
// (the conventional reference of JCGM 101, 9.3.1.2), when ρ is stated.
func (c *compiler) buoyancy(mass uncertainty.Node) uncertainty.Node {
	density := c.prep.Solute.Density
	if !density.Known {
		c.notes.LeaveOut("buoyancy of the air in weighing " + c.prep.Solute.Name + " (density not stated)")
		return mass
	}
	b := (1 - 0.0012/8.0) / (1 - 0.0012/density.Value)
	return c.model.Multiply(mass, c.model.Influence(uncertainty.Influence{
		Name: "buoyancy of the air", Owner: c.prep.Solute.Name, Group: c.prep.Solute.Name,
		Distribution: uncertainty.Rectangular{Low: b, High: b}, Nominal: 1,
	}))
}

// packet adds the content of a bought packet, used whole.
func (c *compiler) packet(k *Packet) {
	if k.Content.Distribution == nil {
		c.notes.LeaveOut("uncertainty of the content of the " + k.Name + " (not stated)")
	}
	c.soluteUsed += k.Content.Value
	c.addSolute(c.pure(c.material(k.Name, "content of the "+k.Name, "g", k.Content, false)))
}

// measure adds a liquid solute: m = V ρ, and keeps its volume.
func (c *compiler) measure(i int) error {
	if !c.prep.Solute.Density.Known {
		return &equipment.Impossible{Reason: "a solute that is measured by volume needs its density, which the prep does not state"}
	}
	volume, err := c.deliver(i)
	if err != nil {
		return err
	}
	mass := c.model.Multiply(volume, c.property("density", "g/mL", c.prep.Solute.Density))
	c.soluteUsed += c.model.Intended(mass)
	if c.hasVolume {
		volume = c.model.Add(c.volume, volume)
	}
	c.volume, c.hasVolume = volume, true
	c.addSolute(c.pure(mass))
	return nil
}

func (c *compiler) addSolute(amount uncertainty.Node) {
	if c.hasAmount {
		amount = c.model.Add(c.amount, amount)
	}
	c.amount, c.hasAmount = amount, true
}

// start begins with a stock, which may have lost strength with age.
func (c *compiler) start(s *Stock) error {
	if s.Strength.Distribution == nil {
		c.notes.LeaveOut("uncertainty of the strength of " + s.Name + " (not stated)")
	}
	strength := c.material(s.Name, "strength of "+s.Name, s.Unit.Name, s.Strength, false)
	concentration, err := c.fromUnit(strength, s.Unit)
	if err != nil {
		return err
	}
	if s.Loss > 0 {
		concentration = c.lose(concentration, "strength that "+s.Name+" has lost", s.Name, s.Name, -s.Loss)
	}
	c.current = &liquid{concentration: concentration, left: math.Inf(1), bought: true, solvent: c.prep.Solvent.Name}
	if s.Solvent != "" {
		c.current.solvent = s.Solvent
	}
	return nil
}

// lose multiplies by 1 + x with x rectangular between 0 and a limit, which may
// be negative, and is intended to be 0.
func (c *compiler) lose(x uncertainty.Node, name, owner, group string, limit float64) uncertainty.Node {
	fraction := c.model.Influence(uncertainty.Influence{
		Name: name, Owner: owner, Group: group,
		Distribution: uncertainty.Rectangular{Low: math.Min(0, limit), High: math.Max(0, limit)},
	})
	return c.model.Multiply(x, c.model.Add(c.model.Constant(1), fraction))
}
