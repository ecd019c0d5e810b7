package route

import (
	"minim/equipment"
	"minim/report/words/note"
	"minim/uncertainty/hazards"
)

// Order says how what one solution is made of is brought together. A part for which
// [hazards.OfSolution.IntoSolvent] holds goes into the solvent, or into what is weaker, never
// the reverse (common practice, no source). The strength does not depend on which goes first.
type Order struct {
	// First and Last are the steps, from 0, that begin the solution and that make it.
	First, Last int
	// Parts are the hazards of what each step brings that is not solvent.
	Parts map[int]hazards.OfSolution
	// IntoSolvent: a part goes into the solvent. Unknown: nothing is stated of a part. Gas: a
	// part, the solvent or the solution gives off gas.
	IntoSolvent, Unknown, Gas bool
	// Ahead is the solvent that goes first, in mL where a mark is made up to and in g where
	// a total is weighed; else Early are the steps, from 0, that are done before the first.
	Ahead float64
	Early []int
	// Bath: in a beaker in a cold bath, since a part is a strong solid or there is less
	// than twice as much solvent to take up its heat. A vessel on a balance goes there
	// itself.
	Bath bool
	// Refused says why solvent cannot go first; nothing where it can.
	Refused note.Note
}

// Orders are those of a route, for each step that of the solution which it is part of, nil
// for a stock and for what no solution is made of yet. Its errors are those of the steps.
func (p *Prep) Orders(r *Route) ([]*Order, error) {
	c := p.newCompiler(r)
	if err := c.all(); err != nil {
		return nil, err
	}
	return c.orders(), nil
}

// all appends all steps, whatever the last makes.
func (c *compiler) all() error {
	for i := range c.route.Steps {
		if err := c.step(i); err != nil {
			return err
		}
	}
	if c.hasAmount && c.hasVolume && c.route.Finished(len(c.route.Steps)-1) {
		c.settle()
	}
	return nil
}

func (c *compiler) orders() []*Order {
	list, first := make([]*Order, len(c.route.Steps)), -1
	for i := range c.route.Steps {
		if first < 0 && c.route.Steps[i].Verb != Start {
			first = i
		}
		if c.solutions[i] == nil {
			continue
		}
		o := c.order(first, i)
		for ; first <= i; first++ {
			list[first] = o
		}
		first = -1
	}
	return list
}

// order is that of the solution which two steps, from 0, begin and make.
func (c *compiler) order(first, last int) *Order {
	o := &Order{First: first, Last: last, Parts: make(map[int]hazards.OfSolution)}
	for i := first; i <= last; i++ {
		part, found := c.parts[i]
		if !found || part.kind == partSolvent {
			continue
		}
		h := c.hazardsOfPart(part)
		o.Parts[i] = h
		o.IntoSolvent = o.IntoSolvent || h.IntoSolvent()
		o.Unknown = o.Unknown || h.Unknown()
		o.Gas = o.Gas || h.GivesOffGas()
	}
	made, solvent := c.hazardsOf(c.solutions[last].concentration), hazards.OfSolution{Solution: c.prep.Solvent.Hazards}
	o.Gas = o.Gas || made.GivesOffGas() || solvent.GivesOffGas()
	if o.IntoSolvent {
		c.arrange(o)
	}
	return o
}

// refused says of the first solution, of those that so many steps have not made yet, that it cannot
// be made solvent first; nothing where there is none.
func (c *compiler) refused(made int) note.Note {
	for _, o := range c.orders() {
		if o != nil && o.Last >= made && !o.Refused.None() {
			return note.Of("solvent-cannot-go-first", "", o.steps(), o.Refused)
		}
	}
	return note.Note{}
}

// warnRefused says of a batch that was made as nobody should make it again.
func (c *compiler) warnRefused(n *equipment.Notes) {
	if why := c.refused(0); !why.None() {
		n.Warn("not-to-be-repeated", c.route.Name, why)
	}
}

// steps are those of the order.
func (o *Order) steps() note.Note {
	if o.First == o.Last {
		return note.Of("one-step", "", o.First+1)
	}
	return note.Of("several-steps", "", o.First+1, o.Last+1)
}

// CheckOrder returns a *[CannotError] where a route cannot be done solvent first, and solvent
// would have to be put onto what must go into it.
func (p *Prep) CheckOrder(r *Route) error {
	c := p.newCompiler(r)
	if err := c.all(); err != nil {
		return err
	}
	if why := c.refused(0); !why.None() {
		return &CannotError{c.route.Name, why, true}
	}
	return nil
}
