package route

import (
	"fmt"
	"math"

	"minim/equipment"
	"minim/equipment/quantity"
	"minim/report/words/note"
	"minim/uncertainty"
	"minim/uncertainty/mixed"
)

// standing is a solution in a vessel that is not closed.
type standing struct {
	owner uncertainty.Owner
	// amount of it, and in what it stands.
	amount  fmt.Stringer
	where   note.Note
	minutes float64
	mouth   equipment.Mouth
	liquid  mixed.Liquid
	// grams is its mass, as intended.
	grams float64
}

const (
	// oftenOpened is how often a stock has been opened where that is not stated (judgement).
	oftenOpened = 5
	// leastEvaporated is the least share that is counted of what may evaporate.
	leastEvaporated = 1e-4
	// mostEvaporated is the greatest that is: see the limit of what is stated.
	mostEvaporated = 0.5
)

// leftOf appends what is left in the end of a solution that a step makes, in mL or, where it is
// weighed, in g:
//
//	S (1 - e), e rectangular from 0 to E = J A t/m
//
// with the flux J of what evaporates, the area A of the opening, the minutes t that it stands
// open, and the mass m of the solution. The solute stays.
func (c *compiler) leftOf(i int, solution uncertainty.Node, weighed bool) (uncertainty.Node, error) {
	s, amount := &c.route.Steps[i], c.model.Intended(solution)
	density := c.likelyDensity(c.medium)
	o := standing{owner: c.owner(uncertainty.OneUse, i+1), amount: equipment.G(amount), liquid: c.medium, grams: amount}
	if weighed {
		amount /= density
	} else {
		o.amount = equipment.ML(amount)
		o.grams *= density
	}
	o.mouth = equipment.HalfFull(amount)
	o.where = note.Of("in-beaker", "", o.mouth.Width)
	closes := s.Verb.Traits().open == 0
	if s.Verb == MakeUpTo {
		o.where = note.Of("in-vessel", s.Measure.Name)
		o.mouth, closes = s.Measure.Mouth(amount)
	}
	if o.minutes = s.Verb.Traits().open; closes || c.prep.Bench.Closed {
		o.minutes = 0
	}
	if s.Open.Known {
		o.minutes = s.Open.Value
	}
	if s.Mouth.Known {
		o.mouth.Width = s.Mouth.Value
		o.where = note.Of("behind-mouth", "", s.Mouth.Value)
	}
	return c.standsOpen(o, solution)
}

// standsOpen appends what is left of a solution that stands open, unless the prep states what
// evaporates: that is counted where the solution is taken from.
func (c *compiler) standsOpen(o standing, solution uncertainty.Node) (uncertainty.Node, error) {
	if c.prep.Solvent.EvaporationStated || o.minutes == 0 {
		return solution, nil
	}
	lost, unknown := o.mouth.Evaporates(o.liquid.Without(c.prep.Solute.Weighed()), o.minutes, c.prep.Bench.warmth())
	share := lost / o.grams
	switch {
	case share >= mostEvaporated:
		return 0, equipment.Cannot("evaporates-away", o.liquid.Name, o.amount, o.where, o.minutes, quantity.Percent(share))
	case c.mayLose(share, unknown):
		c.notes.Assume("stands-open", o.liquid.Name, o.amount, o.where, o.minutes, quantity.Percent(share))
		return c.evaporated(solution, share, o.liquid.Name, o.owner), nil
	}
	return solution, nil
}

// mayLose reports whether a share that evaporates counts, and names what is not known of it.
func (c *compiler) mayLose(share float64, unknown []string) bool {
	for _, name := range unknown {
		c.notes.LeaveOut("evaporation", name)
	}
	counts := share >= leastEvaporated
	if solute := &c.prep.Solute; counts && (mixed.Volatile(solute.Name, solute.State) || mixed.Volatile(solute.Weighed(), "")) {
		c.notes.LeaveOut("evaporation-of-solute", solute.Name)
		return false
	}
	return counts
}

// evaporated multiplies an amount of a liquid by 1 - e.
func (c *compiler) evaporated(amount uncertainty.Node, most float64, liquid string, owner uncertainty.Owner) uncertainty.Node {
	return c.lose(amount, -most, uncertainty.Influence{
		Code: evaporated, Owner: owner, Group: uncertainty.Group{Kind: Evaporation, Name: liquid}, Assumed: true,
		Ground: uncertainty.Ground{By: byVapour},
	})
}

// oftenPoured appends what a strength of a stock has become by what evaporated each time that it
// was opened.
func (c *compiler) oftenPoured(strength uncertainty.Node, s *Stock, liquid mixed.Liquid) uncertainty.Node {
	times := s.Opened.Value
	if !s.Opened.Known {
		times = oftenOpened
		if c.prep.Bench.Closed || c.prep.Solvent.EvaporationStated {
			return strength
		}
	}
	share, unknown := equipment.EvaporatesOpened(liquid.Without(c.prep.Solute.Weighed()), c.likelyDensity(liquid), times, c.prep.Bench.warmth())
	if !s.Opened.Known {
		unknown = nil // that it was opened at all is not known
	}
	if times == 0 || !c.mayLose(math.Min(share, mostEvaporated), unknown) {
		return strength
	}
	c.notes.Assume("opened-often", s.Name, times, quantity.Percent(share))
	owner := uncertainty.Owner{Kind: uncertainty.Stock, Name: s.Name}
	return c.model.Divide(strength, c.evaporated(c.model.Constant(1), math.Min(share, mostEvaporated), liquid.Name, owner))
}

// likelyDensity is that of water where none is known.
func (c *compiler) likelyDensity(l mixed.Liquid) float64 {
	if density, err := c.densityOf(l); err == nil && density > 0 {
		return density
	}
	return 1
}

// warmth is the temperature in °C, 20 where none is stated.
func (b *Bench) warmth() float64 {
	if b.Temperature.Known {
		return b.Temperature.Value
	}
	return 20
}
