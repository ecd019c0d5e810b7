package route

import (
	"math"
	"slices"

	"minim/equipment"
	"minim/report/words/note"
	"minim/uncertainty/hazards"
	"minim/uncertainty/policy"
)

// Ask is what the policy is asked for a prep.
func (p *Prep) Ask() policy.Question {
	dear := p.Solute.Price.Stated() || slices.ContainsFunc(p.Solute.Hazards, func(w string) bool { return !hazards.NoneKnown(w) })
	return policy.Question{Tolerant: len(p.Tolerances) > 0, Asked: p.LeastChance, Volume: p.Volume, Dear: dear}
}

// Figures of a result are what the policy goes by.
func (p *Prep) Figures(r *Result) policy.Figures {
	f := p.Handling(r.Route)
	f.Possible, f.Usable, f.Doubted, f.OutsideIfMisread = r.Possible, r.Possible && p.usable(r), len(note.Doubts(r.Notes.Warnings)) > 0, r.Possible && p.OutsideIfMisread(r)
	f.Chance, f.Within, f.Operations, f.LeftOver, f.Solute, f.Name = r.Chance(), r.HoldsWithin, r.Operations, r.LeftOverML, r.SoluteUsed, r.Route.Name
	return f
}

// Handling is what of these follows from the steps of a route alone.
func (p *Prep) Handling(r *Route) policy.Figures {
	large, _ := p.TooLarge(r)
	return policy.Handling(r.Readings(), large != nil)
}

// Choose applies the policy to results: see [policy].
func (p *Prep) Choose(results []Result) policy.Choice {
	all := make([]policy.Figures, len(results))
	for i := range results {
		all[i] = p.Figures(&results[i])
	}
	return p.Ask().Choose(all)
}

// Rank says which of two possible routes is to be used, a where it is negative and b
// where it is positive, and the rule that decides.
func (p *Prep) Rank(a, b *Result) (int, policy.Rule) {
	c := p.Ask().Choose([]policy.Figures{p.Figures(a), p.Figures(b)})
	if c.Use == 0 {
		return -1, c.Fell[1]
	}
	return 1, c.Fell[0]
}

// Better reports whether one possible route is to be used rather than another. Routes that are
// equal in all, also by name, are not better than each other.
func (p *Prep) Better(a, b *Result) bool {
	order, by := p.Rank(a, b)
	return order < 0 && (by != policy.Name || a.Route.Name < b.Route.Name)
}

// OutsideIfMisread reports whether the expected strength is not inside the first tolerance any more
// when every reading is off by a step, all the same way.
func (p *Prep) OutsideIfMisread(r *Result) bool {
	outside := func(strength float64) bool { return !p.Tolerances[0].Limits.Permits(strength) }
	return len(p.Tolerances) > 0 && (outside(r.Analytic.Value-r.IfMisread) || outside(r.Analytic.Value+r.IfMisread))
}

// ofADivision is the part of a division that a reading is off by.
const ofADivision = 0.2

// misreading is by how much a reading of the step may be off: a step of the display, or of what a
// piston is set to, or 0.2 of a division; 0 where there is one mark, or drops are counted.
func (s *Step) misreading() float64 {
	digit, _ := s.Scale()
	switch {
	case s.Balance != nil || s.Measure != nil && s.Measure.Kind.Traits().Dial:
		return digit
	case s.Measure == nil || s.Measure.Kind.Traits().Counts:
		return 0
	}
	return float64(ofADivision * digit)
}

// Misread works out IfMisread where that is not known: it adds up by how much the intended strength is off when one
// reading after the other is, of those that are still to be made.
func (p *Prep) Misread(r *Result) error {
	known := r.IfMisread != 0
	for i := r.Route.Made; i < len(r.Route.Steps) && !known; i++ {
		by := r.Route.Steps[i].misreading()
		for _, off := range []float64{by, -by} {
			if off == 0 {
				break
			}
			a, err := p.Aim(r.Route.With(i, r.Route.Steps[i].Amount+off))
			if err != nil {
				return err
			}
			if a.Possible && !math.IsInf(a.Strength, 0) && !math.IsNaN(a.Strength) {
				r.IfMisread += math.Abs(a.Strength - r.Intended)
				break
			}
		}
	}
	return nil
}

// Readings of the steps of a route, nothing of those that were made.
func (r *Route) Readings() []policy.Reading {
	list := make([]policy.Reading, len(r.Steps))
	for i := r.Made; i < len(r.Steps); i++ {
		s := &r.Steps[i]
		digit, _ := s.Scale()
		list[i] = policy.Reading{Amount: s.Amount, Scaled: digit > 0, Low: s.Measure != nil && s.Measure.IsLow(s.Amount), Rises: s.Rises()}
		if s.Measure != nil && !s.Measure.SingleUse { // a part and the whole are weighed on one balance
			list[i].Piece = s.piece()
		}
	}
	return list
}

// TooLarge is the first instrument of a route for which the kit has a smaller one of its kind that can
// be read well at the volume, and that; nil without one.
func (p *Prep) TooLarge(r *Route) (large, enough *equipment.Measure) {
	for i := r.Made; i < len(r.Steps); i++ {
		s := &r.Steps[i]
		if s.Measure == nil {
			continue
		}
		for _, k := range p.Kit.Measures {
			if k.Kind == s.Measure.Kind && k.Capacity < s.Measure.Capacity*(1-1e-9) && k.Reads(s.Amount) == nil && !k.IsLow(s.Amount) {
				return s.Measure, k
			}
		}
	}
	return nil, nil
}
