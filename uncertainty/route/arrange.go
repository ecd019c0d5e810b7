package route

import (
	"cmp"
	"slices"

	"minim/report/words/note"
	"minim/uncertainty/hazards"
)

// arrange finds what goes first.
func (c *compiler) arrange(o *Order) {
	s := &c.route.Steps[o.Last]
	switch {
	case s.Verb == MakeUpTo:
		c.aheadOf(o, s.Amount, func(p part) float64 { return p.ml })
	case s.Verb != WeighUpTo:
		c.early(o)
	case c.route.Steps[o.First].Verb == WeighAliquot:
		c.aheadOfAliquot(o)
	default:
		c.aheadOf(o, s.Amount, func(p part) float64 { return p.grams })
	}
	c.refuseStrongSolvent(o)
}

// aheadOf finds the solvent that goes first where a whole of so many mL, or g, is made
// up to.
func (c *compiler) aheadOf(o *Order, whole float64, size func(part) float64) {
	inside, warming := 0.0, 0.0
	for i := o.First; i < o.Last; i++ {
		inside += size(c.parts[i])
		if c.warms(o.Parts[i], c.parts[i]) {
			warming += size(c.parts[i])
		}
		o.Bath = o.Bath || c.strongSolid(o, i)
	}
	if o.Ahead = hazards.SolventAhead(whole, inside); o.Ahead <= 0 && warming > 0 {
		o.Refused = note.Of("no-room-for-solvent", "")
	}
	o.Bath = o.Bath || o.Ahead < 2*warming
}

// strongSolid reports whether a step brings a solid that is stated, or known by its name, to
// be strong.
func (c *compiler) strongSolid(o *Order, i int) bool {
	h := o.Parts[i]
	return c.parts[i].kind == partSolid && h.Strong() && (!h.Unknown() || h.Kind != "")
}

// aheadOfAliquot: the vessel is zeroed again on its solvent, so that the aliquot is read
// from a zero as it is planned to be, and the total is the sum of two readings.
// With errors E of a reading, of which z is that of the zero, the relative variance of
// a/(a + b) is E²(1/a - 1/S)² + E²/S². The model has E²/a² + E²/S² - 2 z²/(a S), with
// E² ≥ 2 z², which is never less where S is at least 3 a.
func (c *compiler) aheadOfAliquot(o *Order) {
	s, aliquot := &c.route.Steps[o.Last], c.route.Steps[o.First].Amount
	o.Ahead = s.Amount - aliquot
	switch enough := o.Ahead >= 2*aliquot*(1-1e-9); {
	case !enough && !c.warms(o.Parts[o.First], c.parts[o.First]):
		o.Ahead = 0 // the aliquot goes first, as it is planned
	case !enough:
		o.Refused = note.Of("cannot-be-cooled", "", s.Balance.Display(s.Amount), s.Balance.Display(aliquot))
	default:
		c.notes.Assume("counted-aliquot-first", s.Balance.Name)
	}
}

// refuseStrongSolvent refuses to say which goes first of a solvent that is strong itself
// and a solution in another one.
func (c *compiler) refuseStrongSolvent(o *Order) {
	solvent := hazards.OfSolution{Solution: c.prep.Solvent.Hazards}
	strong := !solvent.Unknown() && solvent.Strong()
	for i := o.First; i <= o.Last; i++ {
		if h, found := o.Parts[i]; strong && found && h.Strong() && c.parts[i].foreign {
			o.Refused = note.Of("solvent-strong-itself", c.prep.Solvent.Name, i+1)
		}
	}
}

// early finds the steps that add what is weaker than a part before them, and
// whether the part finds twice as much there when it goes in.
func (c *compiler) early(o *Order) {
	there := 0.0
	for k := o.First + 1; k <= o.Last; k++ {
		if v := c.route.Steps[k].Verb; !v.Traits().WeighsSolute && c.weakerThanBefore(o, k) {
			o.Early = append(o.Early, k)
			there += c.parts[k].ml
		}
	}
	slices.SortStableFunc(o.Early, func(a, b int) int { return cmp.Compare(c.expected(c.parts[a]), c.expected(c.parts[b])) })
	for i := o.First; i <= o.Last; i++ {
		_, brought := o.Parts[i]
		if slices.Contains(o.Early, i) || !brought {
			continue
		}
		o.Bath = o.Bath || c.strongSolid(o, i) || c.warms(o.Parts[i], c.parts[i]) && there > 0 && there < 2*c.parts[i].ml
		there += c.parts[i].ml
	}
	c.refuseUsed(o)
}

// weakerThanBefore reports whether a step brings what is weaker than a part that a step
// before it brings and that goes into the solvent.
func (c *compiler) weakerThanBefore(o *Order, k int) bool {
	strength := c.expected(c.parts[k])
	for i := o.First; i < k; i++ {
		if h, found := o.Parts[i]; found && h.IntoSolvent() && strength < c.expected(c.parts[i])*(1-1e-9) {
			return true
		}
	}
	return false
}

// refuseUsed refuses to turn two steps round of which one says what its instrument holds
// from the other.
func (c *compiler) refuseUsed(o *Order) {
	for _, k := range o.Early {
		for i := o.First; i < k; i++ {
			a, b := &c.route.Steps[i], &c.route.Steps[k]
			if a.Measure != nil && a.piece() == b.piece() && (a.State == Used || b.State == Used) {
				o.Refused = note.Of("not-rinsed-between", a.Measure.Name, i+1, k+1)
			}
		}
	}
}
