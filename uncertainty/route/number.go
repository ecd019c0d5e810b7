package route

import (
	"minim/equipment"
	"minim/uncertainty"
)

// number gives the instruments and materials of a route their numbers, in the order in
// which its steps and its ladder use them: so the random streams of their influences
// depend neither on names nor on what else stands in the kit and the prep, and a batch
// that was made as planned has those of its plan.
func (c *compiler) number() {
	c.model.Number(uncertainty.Substance, c.prep.Solute.Name, c.prep.Solute.Weighed())
	c.model.Number(uncertainty.Bench, c.solvent.Name)
	for i := range c.route.Steps {
		s := &c.route.Steps[i]
		if s.Balance != nil {
			c.model.Number(uncertainty.Instrument, s.Balance.Name)
		}
		c.numberMeasure(s.Measure)
		if s.Stock != nil {
			c.model.Number(uncertainty.Stock, s.Stock.Name)
		}
		if s.Packet != nil {
			c.model.Number(uncertainty.Packet, s.Packet.Name)
		}
	}
	if l := c.prep.Ladder; l != nil {
		c.numberMeasure(l.With)
		c.numberMeasure(l.In)
	}
}

// numberMeasure numbers a measure, if there is one, and the one that its line was set with.
func (c *compiler) numberMeasure(k *equipment.Measure) {
	for ; k != nil; k = k.Line.With {
		c.model.Number(uncertainty.Instrument, k.Name)
	}
}
