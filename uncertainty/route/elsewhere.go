package route

import (
	"cmp"
	"context"
	"math"
	"slices"

	"minim/equipment"
)

// Elsewhere says that a route aims elsewhere than at the target, as it does when a form
// factor was forgotten or a mark was misread, and what would bring it there. A comparison
// ranks the route as it is stated.
type Elsewhere struct {
	// Off is by how much of the target the steps aim off: -0.12 for 12 % too little.
	Off float64
	// Step is the one, from 1, of which another reading brings the route to the target; 0
	// where no single reading does, of those of all steps or, in a route of very many, of
	// some: then Cut.
	Step int
	Cut  bool
	// Amended is that step with the reading. Intended is where the route then aims, in
	// the unit of the target, and Chance that of being inside the first tolerance.
	Amended          Step
	Intended, Chance float64
}

const (
	// aimedWithin is the part of the way from the target to a limit of the first tolerance
	// within which a route aims at the target.
	aimedWithin = 0.25
	// leastOff is the least difference that is worth a word, as a fraction of the target.
	leastOff = 0.0005
	// mostTried is the greatest number of readings that are tried times the steps of the
	// route, which each of them takes.
	mostTried = 10000
)

// aimsAt reports whether a route that would give some strength is aimed at the target.
// Where a side has no limit, whoever states the other only is free to keep away from it.
func (p *Prep) aimsAt(strength float64) bool {
	limits, target := p.Tolerances[0].Limits, p.Target.Value
	way := limits.Upper - target
	if strength < target {
		way = target - limits.Lower
	}
	return math.Abs(strength-target) <= max(leastOff*target, aimedWithin*way*(1+1e-9))
}

// elsewhere reports whether a route aims elsewhere. One whose aim only makes up for what
// is known to shift the strength, so that it is expected at the target, does not.
func (p *Prep) elsewhere(r *Result) bool {
	target := p.Target.Value
	if math.IsNaN(r.Intended) || math.IsInf(r.Intended, 0) || !r.Possible || !r.Informative || len(p.Tolerances) == 0 || p.aimsAt(r.Intended) || p.aimsAt(r.Analytic.Value) {
		return false
	}
	return (r.Intended > target) == (r.Analytic.Value > target)
}

// Amend works out for each route that aims elsewhere what would bring it to the target.
func (c *Comparison) Amend(ctx context.Context) error {
	for i := range c.Results {
		r := &c.Results[i]
		if !c.Prep.elsewhere(r) {
			continue
		}
		var err error
		if r.Elsewhere, err = c.amend(ctx, r); err != nil {
			return err
		}
	}
	return nil
}

// amend tries the readings of a route in the order of how simple they are to change. It
// returns nil where the route is better as it is than with any that aims at the target.
func (c *Comparison) amend(ctx context.Context, r *Result) (*Elsewhere, error) {
	e, worse := &Elsewhere{Off: r.Intended/c.Prep.Target.Value - 1}, false
	settings := c.Settings
	settings.Progress = nil // which counts the routes as they are stated
	left := mostTried / len(r.Route.Steps)
	for _, step := range changeable(r.Route) {
		if e.Cut = left <= 0; e.Cut {
			break
		}
		amended, err := c.aimed(r, step, &left)
		if err != nil {
			return nil, err
		}
		if amended == nil {
			continue
		}
		chance, err := c.Prep.ChanceOf(ctx, amended.Route, settings)
		if err != nil {
			return nil, err
		}
		if worse = chance < r.Chance(); !worse {
			e.Step, e.Amended, e.Intended, e.Chance = step+1, amended.Route.Steps[step], amended.Intended, chance
			return e, nil
		}
	}
	if worse {
		return nil, nil
	}
	return e, nil
}

// changeable lists the steps with a reading, from 0: what is weighed of the solute, or
// measured of a liquid one; what is taken of solutions, the first first; what dilutes, the
// last first.
func changeable(r *Route) []int {
	var solute, liquid, taken, diluting []int
	for i := range r.Steps {
		s := &r.Steps[i]
		if digit, _ := s.Scale(); digit == 0 {
			continue
		}
		switch {
		case s.Verb.Traits().WeighsSolute:
			solute = append(solute, i)
		case s.Verb.brings(aVolume):
			liquid = append(liquid, i)
		case s.Rises():
			taken = append(taken, i)
		default:
			diluting = append(diluting, i)
		}
	}
	slices.Reverse(diluting)
	return slices.Concat(solute, liquid, taken, diluting)
}

// aimed is a route with the reading of one step that brings it nearest to the target, not
// simulated; nil where that is not near enough, or makes less than is wanted. It takes the
// readings that it tries off those that are left.
func (c *Comparison) aimed(r *Result, step int, left *int) (*Result, error) {
	p, s := c.Prep, &r.Route.Steps[step]
	digit, capacity := s.Scale()
	var fault error
	aim := func(n int) (strength float64, possible bool) {
		*left--
		a, err := p.Aim(r.Route.With(step, equipment.Digits(float64(n), digit)))
		fault = cmp.Or(fault, err)
		return a.Strength, a.Possible
	}
	low, high := equipment.Crossing(s.Amount/digit, int(capacity/digit+1e-9), s.Rises(), func(n int) (yes, possible bool) {
		strength, possible := aim(n)
		return strength > p.Target.Value, possible
	})
	best, off := 0, math.Inf(1)
	for _, n := range []int{low, high} {
		if strength, possible := aim(n); possible && p.aimsAt(strength) && math.Abs(strength-p.Target.Value) < off {
			best, off = n, math.Abs(strength-p.Target.Value)
		}
	}
	if best == 0 || fault != nil {
		return nil, fault
	}
	found, err := p.Assess(r.Route.With(step, equipment.Digits(float64(best), digit)), c.Settings.Coverage)
	if err != nil || !found.Possible || !found.Informative || r.Enough(p.Volume) && !found.Enough(p.Volume) {
		return nil, err
	}
	return &found, nil
}

// Aim of a route: its intended strength, in the unit of the target, and what it makes and leaves over,
// in mL. It is not Possible where the bench cannot do it.
type Aim struct {
	Possible                     bool
	Strength, MadeML, LeftOverML float64
}

// Aim is where a route aims, without what it is uncertain by.
func (p *Prep) Aim(r *Route) (Aim, error) {
	c, err := p.compile(r)
	switch _, no := equipment.WhyNot(err); {
	case no:
		return Aim{}, nil
	case err != nil:
		return Aim{}, err
	}
	return Aim{true, c.model.Intended(c.strength), c.made, unlessRounding(c.leftOver)}, nil
}
