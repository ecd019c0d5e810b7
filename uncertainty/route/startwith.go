package route

import (
	"math"

	"minim/equipment"
	"minim/uncertainty"
	"minim/uncertainty/mixed"
	"minim/uncertainty/strengths"
)

// weigh adds solute = (m b - left) assay form.
func (c *compiler) weigh(i int) error {
	mass, err := c.weighSolute(i)
	if err != nil {
		return err
	}
	c.noteMass(i, mass)
	c.addSolid(mass, c.purity())
	return nil
}

// weighSolute appends the mass of solute that leaves the boat.
func (c *compiler) weighSolute(i int) (uncertainty.Node, error) {
	s, use := &c.route.Steps[i], c.use(i)
	mass, err := c.onBalance(i, use)
	if err != nil {
		return 0, err
	}
	mass = c.buoyancy(mass)
	switch {
	case s.LeftBehind.Value > 0:
		mass = c.model.Subtract(mass, s.Balance.LeftBehind(use, s.LeftBehind.Value))
	default:
		c.noteBoat(i)
	}
	c.call(mass, massWeighed, c.prep.Solute.Weighed(), "g")
	c.noteWater()
	c.bringsSolid(s.Amount)
	c.soluteUsed += s.Amount + s.Lost
	return mass, nil
}

// noteMass adds to what is weighed for the solution that is being made.
func (c *compiler) noteMass(i int, mass uncertainty.Node) {
	if n := len(c.masses); n > 0 && c.masses[n-1].step == i-1 && c.route.Steps[i-1].Verb == Weigh {
		c.masses[n-1] = weighed{i, c.model.Add(c.masses[n-1].mass, mass)}
		return
	}
	c.masses = append(c.masses, weighed{i, mass})
}

// purity is the mass of the substance that the strength counts over that of what
// is weighed: assay times form factor.
func (c *compiler) purity() uncertainty.Node {
	solute := &c.prep.Solute
	stated := solute.Assay
	if why := c.prep.NotPure(); !why.None() {
		c.notes.Warn(why.Code, why.Subject)
	}
	if !stated.Known {
		c.notes.TakeAsPure(solute.Weighed())
		stated.Value = 1
	} else if stated.Distribution == nil {
		c.notes.LeaveOut("uncertainty-of-assay", solute.Weighed())
	}
	if solute.FormFactor > 1 {
		c.notes.Warn("form-factor", solute.Weighed(), solute.FormFactor)
	}
	purity := c.propertyOf(solute.Weighed(), assay, "", stated)
	switch {
	case solute.WeighedMolarMass.Known:
		form := c.model.Divide(c.property(&strengths.ByAmount.Traits().Needs), c.propertyOf(solute.Weighed(), molarMass, "g/mol", solute.WeighedMolarMass))
		return c.call(c.model.Multiply(purity, form), purityOfSolute, solute.Weighed(), "")
	case solute.Converted():
		return c.call(c.model.Multiply(purity, c.fixed(solute.FormFactor, formFactor, solute.Weighed(), "", uncertainty.Ground{})), purityOfSolute, solute.Weighed(), "")
	}
	return purity
}

// packet adds the content of a bought packet, used whole.
func (c *compiler) packet(s *Step) {
	k := s.Packet
	if k.Content.Distribution == nil {
		c.notes.LeaveOut("uncertainty-of-content", k.Name)
	}
	if k.InUnits {
		c.units(s)
		return
	}
	c.noteWater()
	c.bringsSolid(k.Content.Value)
	c.soluteUsed += k.Content.Value + s.Lost
	c.addSolid(c.material(uncertainty.Packet, k.Name, contentOfPacket, "g", k.Content), c.purity())
}

// units adds the content of a packet in units of activity: as the strengths count them, or by
// the activity of the substance that they count as its mass.
func (c *compiler) units(s *Step) {
	amount, mass := c.material(uncertainty.Packet, s.Packet.Name, contentOfPacket, "U", s.Packet.Content), c.model.Constant(0)
	if c.prep.CountsMass() {
		amount = c.model.Divide(amount, c.property(&strengths.ByActivity.Traits().Needs))
		mass = amount
	}
	c.bringsSolid(c.model.Intended(mass))
	c.soluteUsed += float64(c.model.Intended(amount) * (1 + s.Lost/s.Packet.Content.Value))
	if c.hasAmount {
		mass = c.model.Add(c.mass, mass)
	}
	c.mass = mass
	c.addSolute(amount)
}

// measure adds a liquid solute: m = V ρ, or V where volumes are carried, and keeps its volume.
func (c *compiler) measure(i int) error {
	if !c.prep.Solute.Density.Known && !c.prep.countsVolume() {
		return equipment.Cannot("solute-without-density", "")
	}
	c.medium = mixed.Of(c.prep.Solute.Weighed())
	c.medium.Solute = true
	volume, err := c.deliver(i, c.medium, "")
	if err != nil {
		return err
	}
	density := c.model.Constant(1) // of a liquid of which the volume counts
	if !c.prep.countsVolume() {
		density = c.density()
	}
	mass := c.model.Multiply(volume, density)
	c.brings(part{ml: c.model.Intended(volume), grams: c.model.Intended(mass), kind: partLiquid})
	s := &c.route.Steps[i]
	c.soluteUsed += float64(c.model.Intended(mass) * (1 + s.Lost/s.Amount))
	if c.hasVolume {
		volume = c.model.Add(c.volume, volume)
	}
	c.volume, c.hasVolume = volume, true
	purity := c.purity()
	c.addSolid(mass, purity)
	c.carry(i, c.model.Multiply(density, purity))
	return nil
}

// addSolid adds solute as it is weighed or measured, of some purity.
func (c *compiler) addSolid(mass, purity uncertainty.Node) {
	amount := c.model.Multiply(mass, purity)
	if c.hasAmount {
		mass = c.model.Add(c.mass, mass)
	}
	c.mass = mass
	c.addSolute(amount)
}

func (c *compiler) addSolute(amount uncertainty.Node) {
	if c.hasAmount {
		amount = c.model.Add(c.amount, amount)
	}
	c.amount, c.hasAmount = amount, true
}

// start begins with a stock.
func (c *compiler) start(s *Stock) (err error) {
	c.current, err = c.stock(s)
	return err
}

// stock is the solution of a stock, which may have lost strength with age.
func (c *compiler) stock(s *Stock) (*liquid, error) {
	if l := c.stocks[s]; l != nil {
		return l, nil
	}
	if s.Strength.Distribution == nil {
		c.notes.LeaveOut("uncertainty-of-strength", s.Name)
	}
	strength := c.strengthAsCounted(s)
	l := &liquid{name: s.Name, left: math.Inf(1), bought: true, medium: c.solvent}
	if s.Solvent != "" {
		l.medium = mixed.Of(s.Solvent)
	}
	if err := c.concentrate(l, s, strength); err != nil {
		return nil, err
	}
	if s.Volume.Known {
		l.volume = c.material(uncertainty.Stock, s.Name, volumeOfStock, "mL", s.Volume)
		l.left = c.model.Intended(l.volume)
	}
	c.call(l.concentration, inStock, s.Name, c.inOne())
	c.stocks[s] = l
	return l, nil
}

// lose multiplies by 1 + the influence, rectangular between 0 and a limit, which may
// be negative, and intended to be 0.
func (c *compiler) lose(x uncertainty.Node, limit float64, fraction uncertainty.Influence) uncertainty.Node {
	fraction.Distribution = uncertainty.Rectangular{Low: math.Min(0, limit), High: math.Max(0, limit)}
	return c.model.Multiply(x, c.model.Add(c.model.Constant(1), c.model.Influence(fraction)))
}
