package route

import (
	"cmp"
	"math"

	"minim/equipment"
	"minim/uncertainty"
	"minim/uncertainty/mixed"
)

// dissolve: c = solute / (V + m φ), in a measured volume of solvent; for a
// liquid solute c = solute / ((V + its volume)(1 - ε)).
func (c *compiler) dissolve(i int) error {
	s := &c.route.Steps[i]
	if s.Balance != nil {
		return c.dissolveInWeighed(i)
	}
	volume, err := c.deliver(i, c.solvent, "")
	if err != nil {
		return err
	}
	m := c.model
	c.brings(part{ml: m.Intended(volume), kind: partSolvent})
	c.leftOver += m.Intended(volume) * s.Lost / s.Amount
	c.carry(i, m.Constant(0))
	if c.hasVolume {
		volume, c.medium = c.contracted(i, c.volume, volume, c.medium, c.solvent, 0), c.medium.With(m.Intended(c.volume), c.solvent, m.Intended(volume))
	} else {
		volume = m.Add(volume, m.Multiply(c.mass, c.phi()))
	}
	if volume, err = c.leftOf(i, volume, false); err != nil {
		return err
	}
	c.call(volume, volumeOfSolution, "", "mL")
	c.become(m.Divide(c.amount, volume), volume)
	return nil
}

// dissolveInWeighed: w = solute / (m + m_solvent), with the whole mass m of what
// is dissolved.
func (c *compiler) dissolveInWeighed(i int) error {
	s := &c.route.Steps[i]
	solvent, err := s.Balance.Weigh(c.use(i), s.Amount, c.use(i).Step, c.pan(i))
	if err != nil {
		return err
	}
	solvent = c.buoyancyOfSolvent(i, solvent)
	c.brings(part{ml: s.Amount / cmp.Or(c.prep.Solvent.Density.Value, 1), kind: partSolvent})
	c.masses = append(c.masses, weighed{i, solvent})
	if c.hasVolume {
		c.mixInto(c.model.Intended(c.volume), s.Amount)
	}
	c.call(solvent, massWeighed, c.prep.Solvent.Name, "g")
	total, err := c.leftOf(i, c.model.Add(c.mass, solvent), true)
	if err != nil {
		return err
	}
	c.call(total, massOfSolution, "", "g")
	return c.becomeByMass(c.model.Divide(c.amount, total), total)
}

// becomeByMass makes a finished solution of a mass fraction and a mass in g.
func (c *compiler) becomeByMass(w, grams uncertainty.Node) error {
	concentration, density, err := c.byVolume(w, c.medium)
	if err != nil {
		return err
	}
	c.call(w, fractionOf, "", "")
	c.leftOver += c.route.Steps[c.at].Lost / c.model.Intended(density)
	c.become(concentration, c.model.Divide(grams, density))
	c.current.fraction, c.current.hasFraction = w, true
	return nil
}

// makeUpTo: c = solute / V, up to the mark of a vessel.
func (c *compiler) makeUpTo(i int) error {
	s := &c.route.Steps[i]
	if err := s.Measure.Reads(s.Amount); err != nil {
		return err
	}
	if c.hasVolume {
		if inside := c.model.Intended(c.volume); inside >= s.Amount {
			return equipment.Cannot("above-mark-already", "", equipment.ML(inside), equipment.ML(s.Amount))
		}
		c.medium = c.medium.UpTo(c.model.Intended(c.volume), c.solvent, s.Amount)
	}
	use := c.use(i)
	use.Day = c.dayOf(c.medium)
	volume, err := s.Measure.Contain(use, s.Amount)
	if err != nil {
		return err
	}
	if volume, err = c.leftOf(i, volume, false); err != nil {
		return err
	}
	c.notePlastic(s.Measure, c.medium)
	c.carry(i, c.model.Constant(0))
	c.discard()
	c.leftOver += s.Lost
	c.call(volume, volumeInVessel, s.Measure.Name, "mL")
	c.become(c.model.Divide(c.amount, volume), volume)
	c.before[s.piece()] = c.current.concentration
	return nil
}

// take measures out an aliquot: solute = c a. Aliquots taken one after the
// other from one solution add up.
func (c *compiler) take(i int) error {
	if err := c.turnTo(i); err != nil {
		return err
	}
	a, err := c.deliver(i, c.current.medium, c.nameOf(c.current))
	if err != nil {
		return err
	}
	if err := c.drawMeasured(i, c.current, a); err != nil {
		return err
	}
	amount := c.model.Multiply(c.current.concentration, a)
	if c.hasVolume {
		a = c.model.Add(c.volume, a)
	}
	c.volume, c.hasVolume, c.medium = a, true, c.current.medium
	c.addSolute(amount)
	c.carry(i, c.current.concentration)
	return nil
}

// deliver measures out a volume, or drops, of a liquid: of a pure one, or of the solution
// of that name.
func (c *compiler) deliver(i int, liquid mixed.Liquid, solution string) (uncertainty.Node, error) {
	s, use := &c.route.Steps[i], c.use(i)
	use.Day, use.Solution = c.dayOf(liquid), solution
	c.notePlastic(s.Measure, liquid)
	of := s.Measure.Deliver
	if s.Measure.Kind.Traits().Counts {
		of = s.Measure.Drops
	}
	volume, err := of(use, s.Amount)
	if err == nil {
		c.call(volume, volumeMeasured, s.Measure.Name, "mL")
	}
	c.volumes = append(c.volumes, measuredOut{i, volume, use})
	return volume, err
}

// nameOf names a solution: a stock as its label does, one that was made by what is in it.
func (c *compiler) nameOf(l *liquid) string {
	switch {
	case l.name != "":
		return l.name
	case l.medium.Solute:
		return c.prep.Solute.Name + " in " + c.prep.Solvent.Name
	}
	return c.prep.Solute.Name + " in " + l.medium.Name
}

// carry adds the solute that an instrument brings along which was not rinsed
// with what it takes, film (c_before - c), with c_before = 0 for a film of
// solvent; and keeps in mind what it takes now.
func (c *compiler) carry(i int, now uncertainty.Node) {
	s, m := &c.route.Steps[i], c.model
	before := m.Constant(0)
	if s.State == Used {
		before = c.before[s.piece()]
	}
	c.before[s.piece()] = now
	if s.State == "" && s.Verb != MakeUpTo {
		c.notes.Assume("clean-instruments", "")
	}
	if s.State != Wet && s.State != Used {
		return
	}
	extra := m.Multiply(s.Measure.Film(c.use(i)), m.Subtract(before, now))
	without := m.Expected(c.amount)
	c.amount = m.Add(c.amount, extra)
	if shift := m.Expected(c.amount)/without - 1; shift > 0.0005 || shift < -0.0005 {
		c.notes.Warn("carried-over", c.route.Name, i+1, s.Measure.Name, 100*shift)
	}
}

// evaporate counts, once, what a prep states that a finished solution loses before it is taken
// from: its strength grows by 1/(1 - e), e rectangular from 0 to E.
func (c *compiler) evaporate(i int, l *liquid) {
	limit := c.prep.Solvent.Evaporation
	if limit == 0 || l.evaporated || l.bought {
		return
	}
	grown := c.lose(c.model.Constant(1), -limit, uncertainty.Influence{
		Code: evaporated, Owner: c.owner(uncertainty.OneUse, i+1), Group: uncertainty.Group{Kind: Evaporation, Name: c.prep.Solvent.Name},
	})
	l.concentration = c.model.Divide(l.concentration, grown)
	l.volume = c.model.Multiply(l.volume, grown)
	l.hasFraction, l.evaporated = false, true
}

// drawMeasured is draw for a volume that a step has measured out, in mL or drops.
func (c *compiler) drawMeasured(i int, l *liquid, a uncertainty.Node) error {
	s, volume := &c.route.Steps[i], c.model.Intended(a)
	return c.draw(l, a, volume, s.Lost*volume/s.Amount)
}

// draw takes a volume out of a solution, intended to be so many mL, and what was
// taken besides and lost.
func (c *compiler) draw(l *liquid, a uncertainty.Node, intended, lost float64) error {
	if intended+lost > l.left*(1+1e-9) {
		return equipment.Cannot("more-than-is-left", "", equipment.ML(intended+lost), equipment.ML(l.left))
	}
	c.brings(part{ml: intended, concentration: l.concentration, foreign: l.medium.Name != c.solvent.Name})
	c.leftOver += lost
	if l.bought {
		c.soluteUsed += float64((intended + lost) * c.model.Intended(l.concentration))
	}
	if l.discarded {
		c.leftOver -= intended + lost
	}
	if math.IsInf(l.left, 1) {
		return nil
	}
	l.left = unlessRounding(l.left - intended - lost)
	l.volume = c.model.Subtract(l.volume, a)
	if spare := equipment.KeptBack(intended); !l.bought && l.left < spare-float64(1e-9*(intended+spare)) {
		c.notes.Warn("takes-nearly-all", c.route.Name, c.at+1, equipment.ML(intended), equipment.ML(l.left), equipment.ML(spare))
	}
	if lost > 0 {
		l.volume = c.model.Subtract(l.volume, c.model.Constant(lost))
	}
	return nil
}

// discard counts what is left of the solution at hand, from which an aliquot
// has been taken, and turns to the next.
func (c *compiler) discard() {
	if c.current != nil && !c.current.bought && !c.current.discarded {
		c.leftOver += c.current.left
		c.current.discarded = true
	}
	c.current = nil
}

// add dilutes with a measured volume of solvent: c = solute / ((a + b)(1 - ε)).
func (c *compiler) add(i int) error {
	b, err := c.deliver(i, c.solvent, "")
	if err != nil {
		return err
	}
	c.discard()
	c.brings(part{ml: c.model.Intended(b), kind: partSolvent})
	s := &c.route.Steps[i]
	c.leftOver += c.model.Intended(b) * s.Lost / s.Amount // which may be drops
	c.mix(i, b, c.solvent, 0)
	c.carry(i, c.model.Constant(0))
	c.volume, err = c.leftOf(i, c.volume, false)
	return err
}

// mix adds a volume of a liquid, with so many g of solute, to the aliquot, or to what is mixed from it.
func (c *compiler) mix(i int, b uncertainty.Node, other mixed.Liquid, grams float64) {
	mixed := c.medium.With(c.model.Intended(c.volume), other, c.model.Intended(b))
	c.volume = c.call(c.contracted(i, c.volume, b, c.medium, other, grams), mixedVolume, "", "mL")
	c.medium = mixed
}
