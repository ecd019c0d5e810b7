package route

import "math"

// boat is what becomes of the boat on which solute is weighed.
type boat struct {
	// Used is false where it is weighed straight into the vessel in which a total is then
	// weighed.
	Used bool
	// Rinsed: what stays on it is rinsed into the vessel; else it is emptied, and no solvent
	// can or need follow.
	Rinsed bool
}

// Boat says what becomes of the boat in a step, from 0, that weighs solute. A boat can be
// rinsed where solvent is made up to a mark or a total; it is not where the step says what
// stays on it or weighs it back.
func (p *Prep) Boat(r *Route, i int) boat {
	s := &r.Steps[i]
	last := i + 1
	for last < len(r.Steps) && !r.Finished(last) {
		last++
	}
	switch {
	case s.Verb != Weigh || last == len(r.Steps):
		return boat{Used: true}
	case p.straight(r, i, last):
		return boat{}
	}
	return boat{Used: true, Rinsed: r.Steps[last].Verb.Traits().Fills && !s.WeighedBack && !(s.LeftBehind.Value > 0)}
}

// straight reports whether solute can be weighed straight into the vessel, which the
// total is then read from the same zero of: it is alone there, and need not go into
// the solvent.
func (p *Prep) straight(r *Route, i, last int) bool {
	s, total := &r.Steps[i], &r.Steps[last]
	h := p.HazardsAt(math.Inf(1), math.Inf(1))
	return i == 0 && last == 1 && total.Verb == WeighUpTo && total.Balance == s.Balance && max(total.Piece, 1) == max(s.Piece, 1) &&
		!s.SeparateTare && !s.WeighedBack && !s.LeftBehind.Known && !h.IntoSolvent()
}

// noteBoat says what is taken of what stays on the boat.
func (c *compiler) noteBoat(i int) {
	s := &c.route.Steps[i]
	if s.WeighedBack || s.LeftBehind.Known {
		return
	}
	switch b, fluid := c.prep.Boat(c.route, i), c.prep.Solute.Fluid(); {
	case b.Rinsed && fluid:
		c.notes.LeaveOut("left-in-rinsed-beaker", "")
	case b.Used && fluid:
		c.notes.LeaveOut("left-in-beaker", "")
	case b.Rinsed:
		c.notes.LeaveOut("left-on-rinsed-boat", "")
	case b.Used:
		c.notes.LeaveOut("left-on-boat", "")
	}
}
