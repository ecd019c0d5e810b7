package route

import (
	"math"

	"minim/equipment"
	"minim/uncertainty/policy"
)

// Ask is what the policy is asked for a prep.
func (p *Prep) Ask() policy.Question {
	return policy.Question{
		Tolerant: len(p.Tolerances) > 0, Asked: p.LeastChance, Volume: p.Volume,
		Dear: len(p.Solute.Hazards) > 0 || p.Solute.Price.Stated(),
	}
}

// Figures of a result are what the policy goes by.
func (p *Prep) Figures(r *Result) policy.Figures {
	return policy.Figures{
		Possible: r.Possible, Usable: r.Possible && p.usable(r), Chance: r.Chance(), Within: r.HoldsWithin,
		OutsideIfMisread: r.Possible && p.OutsideIfMisread(r), Operations: r.Operations,
		LeftOver: r.LeftOverML, Solute: r.SoluteUsed, LowOnScale: r.Route.LowOnScale() != nil,
		BothWays: r.Route.BothWays() != nil, TooLarge: p.tooLarge(r.Route), Roundness: r.Route.Roundness(), Name: r.Route.Name,
	}
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
	if len(p.Tolerances) == 0 {
		return false
	}
	limits := p.Tolerances[0].Limits
	return !limits.Permits(r.Analytic.Value-r.IfMisread) || !limits.Permits(r.Analytic.Value+r.IfMisread)
}

// ofADivision is the part of a division that a reading is off by.
const ofADivision = 0.2

// misreading is by how much a reading of the step may be off: a step of the display, or 0.2 of a
// division; 0 where there is one mark, or drops are counted.
func (s *Step) misreading() float64 {
	digit, _ := s.Scale()
	switch {
	case s.Balance != nil || s.Measure != nil && s.Measure.Kind.Traits().Dial:
		return digit
	case s.Measure == nil || s.Measure.Kind.Traits().Counts:
		return 0
	}
	return ofADivision * digit
}

// Misread works out IfMisread of a result that was not simulated.
func (p *Prep) Misread(r *Result) (err error) {
	r.IfMisread, err = p.misread(r)
	return err
}

// misread adds up by how much the intended strength is off when one reading after the other is, in
// the unit of the target.
func (p *Prep) misread(r *Result) (sum float64, err error) {
	for i := range r.Route.Steps {
		by := r.Route.Steps[i].misreading()
		for _, off := range []float64{by, -by} {
			if off == 0 {
				break
			}
			a, err := p.Aim(r.Route.With(i, r.Route.Steps[i].Amount+off))
			if err != nil {
				return 0, err
			}
			if a.Possible && !math.IsInf(a.Strength, 0) && !math.IsNaN(a.Strength) {
				sum += math.Abs(a.Strength - r.Intended)
				break
			}
		}
	}
	return sum, nil
}

// Roundness of the readings of a route, of which what has one mark is none.
func (r *Route) Roundness() (sum float64) {
	for i := range r.Steps {
		if digit, _ := r.Steps[i].Scale(); digit > 0 {
			sum += policy.RoundnessOf(r.Steps[i].Amount)
		}
	}
	return sum
}

// LowOnScale is the first instrument that is read below the part of its scale from which on it is
// read well; nil without one.
func (r *Route) LowOnScale() *equipment.Measure {
	for i := range r.Steps {
		if s := &r.Steps[i]; s.Measure != nil && s.Measure.IsLow(s.Amount) {
			return s.Measure
		}
	}
	return nil
}

// BothWays is the first instrument of which a piece makes the solution stronger in one step and
// weaker in another, so that its error may cancel; nil without one. On a balance that is how
// a part and the whole are weighed.
func (r *Route) BothWays() *equipment.Measure {
	rises := make(map[pieceOf]bool)
	for i := range r.Steps {
		s := &r.Steps[i]
		if s.Measure == nil || s.Measure.SingleUse {
			continue
		}
		before, used := rises[s.piece()]
		if used && before != s.Rises() {
			return s.Measure
		}
		rises[s.piece()] = s.Rises()
	}
	return nil
}

func (p *Prep) tooLarge(r *Route) bool {
	large, _ := p.TooLarge(r)
	return large != nil
}

// TooLarge is the first vessel of a route for which the kit has a smaller one of its kind that can be
// read at the volume, and that; nil without one.
func (p *Prep) TooLarge(r *Route) (large, enough *equipment.Measure) {
	for i := range r.Steps {
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
