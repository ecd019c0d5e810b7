package route

import (
	"math"

	"minim/equipment"
)

// takeAll goes on with all that is left of a solution: solute = c V, where V is what
// was made less what was taken, so that it cancels with the volume in c.
func (c *compiler) takeAll(i int) error {
	if err := c.turnTo(i); err != nil {
		return err
	}
	l := c.current
	switch {
	case math.IsInf(l.left, 1):
		return equipment.Cannot("all-of-unstated-volume", "")
	case l.left <= 1e-9:
		return equipment.Cannot("nothing-left", "")
	}
	c.notes.Assume("goes-on-whole", "")
	c.brings(part{ml: l.left, concentration: l.concentration, foreign: l.medium.Name != c.solvent.Name})
	amount := c.model.Multiply(l.concentration, l.volume)
	if l.bought {
		c.soluteUsed += c.model.Intended(amount)
		c.noteVolume(l)
	}
	c.volume, c.hasVolume, c.medium = l.volume, true, l.medium
	if l.discarded {
		c.leftOver -= l.left
	}
	l.left = 0
	c.addSolute(amount)
	return nil
}

// turnTo goes on with the solution that a step says it takes from, if it does: what stands at hand is left over
// unless it is taken up again.
func (c *compiler) turnTo(i int) (err error) {
	c.settle()
	if s := &c.route.Steps[i]; s.Stock != nil || s.From > 0 {
		c.discard()
		c.current, err = c.strong(s)
	}
	if err == nil {
		c.evaporate(i, c.current)
	}
	return err
}

// noteVolume says that the volume of a stock which is taken whole is taken as exact.
func (c *compiler) noteVolume(l *liquid) {
	for s, of := range c.stocks {
		if of == l && s.Volume.Distribution == nil {
			c.notes.LeaveOut("uncertainty-of-volume", s.Name)
		}
	}
}

// strengthen adds a measured volume of a stronger solution:
//
//	c = (solute + c_s b)/((a + b)(1 - ε))
func (c *compiler) strengthen(i int) error {
	s := &c.route.Steps[i]
	strong, err := c.strong(s)
	if err != nil {
		return err
	}
	c.evaporate(i, strong)
	b, err := c.deliver(i, strong.medium, c.nameOf(strong))
	if err != nil {
		return err
	}
	if err := c.drawMeasured(i, strong, b); err != nil {
		return err
	}
	c.discard()
	c.mix(i, b, strong.medium, float64(c.model.Intended(strong.concentration)*c.model.Intended(b)))
	c.addSolute(c.model.Multiply(strong.concentration, b))
	c.carry(i, strong.concentration)
	c.volume, err = c.leftOf(i, c.volume, false)
	return err
}

// strong is the solution that a step strengthens with, or takes from.
func (c *compiler) strong(s *Step) (*liquid, error) {
	if s.Stock != nil {
		return c.stock(s.Stock)
	}
	if l := c.solutions[s.From-1]; l != nil {
		return l, nil
	}
	return nil, equipment.Cannot("no-solution-made", "", s.From)
}

// addSoluteTo dissolves weighed solute in a solution:
//
//	c = (solute + m P)/(a + m φ)
//
// with the purity P of the solute and its apparent specific volume φ.
func (c *compiler) addSoluteTo(i int) error {
	mass, err := c.weighSolute(i)
	if err != nil {
		return err
	}
	c.discard()
	m := c.model
	c.volume = c.call(m.Add(c.volume, m.Multiply(mass, c.phi())), volumeOfSolution, "", "mL")
	c.addSolute(m.Multiply(mass, c.purity()))
	c.volume, err = c.leftOf(i, c.volume, false)
	return err
}
