package route

// Holds reports whether what the steps of a route bring goes into the vessels that they make
// up, below the mark, or the total, where solvent went first as planned orders say: those of
// the route before one of its readings was changed.
func (p *Prep) Holds(r *Route, planned []*Order) bool {
	c := p.newCompiler(r)
	if c.all() != nil {
		return false
	}
	for i, o := range planned {
		if o != nil && o.Last == i && c.inside(o) >= r.Steps[i].Amount {
			return false
		}
	}
	return true
}

// inside is what stands in a vessel before it is made up, in the unit of the last step: nothing
// is known of one that is not made up, or on a balance together with its aliquot.
func (c *compiler) inside(o *Order) (amount float64) {
	last := c.route.Steps[o.Last].Verb
	if last != MakeUpTo && (last != WeighUpTo || c.route.Steps[o.First].Verb == WeighAliquot) {
		return 0
	}
	amount = o.Ahead
	for i := o.First; i < o.Last; i++ {
		if last == MakeUpTo {
			amount += c.parts[i].ml
		} else {
			amount += c.parts[i].grams
		}
	}
	return amount
}
