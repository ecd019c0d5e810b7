package contest

import (
	"cmp"
	"context"
	"math"
	"slices"

	"minim/equipment"
	"minim/uncertainty/route"
)

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
func aimsAt(p *route.Prep, strength float64) bool {
	limits, target := p.Tolerances[0].Limits, p.Target.Value
	way := limits.Upper - target
	if strength < target {
		way = target - limits.Lower
	}
	return math.Abs(strength-target) <= max(leastOff*target, aimedWithin*way*(1+1e-9))
}

// Elsewhere reports whether a route is expected elsewhere than at the target: by more than a quarter of
// the way to a limit of the first tolerance. What is known to shift the strength counts, so that an aim
// that makes up for it is none.
func Elsewhere(p *route.Prep, r *route.Result) bool {
	if math.IsNaN(r.Intended) || math.IsInf(r.Intended, 0) || !r.Possible || !r.Informative || len(p.Tolerances) == 0 {
		return false
	}
	return !aimsAt(p, r.Analytic.Value)
}

// Room is the part of the target by which a rounded reading may lead aside of it before it is looked at
// whether it aims [Elsewhere]: half of the way to the nearer limit, since rounding may make up for what shifts the
// strength. The prep has a tolerance.
func Room(p *route.Prep) float64 {
	limits := p.Tolerances[0].Limits
	return float64(0.5 * min(p.Target.Value-limits.Lower, limits.Upper-p.Target.Value) / p.Target.Value)
}

// MayAim reports whether a route that aims at so many times the target may be expected at it by what is known to shift
// it: no farther off than half of the way to the limit on that side. The prep has a tolerance.
func MayAim(p *route.Prep, times float64) bool {
	limits, target := p.Tolerances[0].Limits, p.Target.Value
	if times > 1 {
		return float64((times-1)*target) <= float64(0.5*(limits.Upper-target))
	}
	return float64((1-times)*target) <= float64(0.5*(target-limits.Lower))
}

// Amend works out for each route that aims elsewhere what would bring it to the target.
func Amend(ctx context.Context, c *route.Comparison) error {
	for i := range c.Results {
		r := &c.Results[i]
		if !Elsewhere(c.Prep, r) {
			continue
		}
		var err error
		if r.Elsewhere, err = amend(ctx, c, r); err != nil {
			return err
		}
	}
	return nil
}

// amend tries the readings of a route in the order of how simple they are to change. It
// returns nil where the route is better as it is than with any that aims at the target.
func amend(ctx context.Context, c *route.Comparison, r *route.Result) (*route.Elsewhere, error) {
	e, worse := &route.Elsewhere{Off: r.Analytic.Value/c.Prep.Target.Value - 1}, false
	settings := c.Settings
	settings.Progress = nil // which counts the routes as they are stated
	left := mostTried / len(r.Route.Steps)
	for _, step := range changeable(r.Route) {
		if e.Cut = left <= 0; e.Cut {
			break
		}
		amended, err := aimed(c, r, step, &left)
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
func changeable(r *route.Route) []int {
	var solute, liquid, taken, diluting []int
	for i := range r.Steps {
		s := &r.Steps[i]
		if digit, _ := s.Scale(); digit == 0 {
			continue
		}
		switch {
		case s.Verb.Traits().WeighsSolute:
			solute = append(solute, i)
		case s.Verb.MeasuresSolute():
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
// simulated; nil where that is not near enough, makes less than is wanted, or a solution that is
// stronger than may be made. It takes the readings that it tries off those that are left.
func aimed(c *route.Comparison, r *route.Result, step int, left *int) (best *route.Result, err error) {
	p, s := c.Prep, &r.Route.Steps[step]
	digit, capacity := s.Scale()
	from := r
	for range mostAimings {
		low, high, err := around(p, from, step, left)
		if err != nil {
			return nil, err
		}
		before := best
		for _, n := range []int{low, high} {
			if n < 1 || float64(n) > capacity/digit+1e-9 {
				continue
			}
			*left--
			found, err := p.Assess(r.Route.With(step, equipment.Digits(float64(n), digit)), c.Settings.Coverage)
			if err != nil {
				return nil, err
			}
			if found.Possible && found.Informative && (best == nil || off(p, &found) < off(p, best)) {
				best = &found
			}
		}
		if best == before {
			break
		}
		from = best
	}
	if best == nil || !aimsAt(p, best.Analytic.Value) || r.Enough(p.Volume) && !best.Enough(p.Volume) {
		return nil, nil
	}
	if weak, err := WeakEnough(p, p.Limits, best.Route); err != nil || !weak {
		return nil, err
	}
	return best, nil
}

// mostAimings is how often a reading is aimed: by what was known to shift the strength, and again
// by what shifts it at the reading that was found.
const mostAimings = 3

// off is by how much the expected strength is off the target.
func off(p *route.Prep, r *route.Result) float64 {
	return math.Abs(r.Analytic.Value - p.Target.Value)
}

// around are the numbers of digits next to which the strength passes the target, where it is
// shifted by as much as that of a route with another reading of the step.
func around(p *route.Prep, r *route.Result, step int, left *int) (low, high int, err error) {
	s, shift := &r.Route.Steps[step], 1.0
	if r.Intended > 0 {
		shift = r.Analytic.Value / r.Intended
	}
	digit, capacity := s.Scale()
	low, high = equipment.Crossing(s.Amount/digit, int(capacity/digit+1e-9), s.Rises(), func(n int) (yes, possible bool) {
		*left--
		a, fault := p.Aim(r.Route.With(step, equipment.Digits(float64(n), digit)))
		err = cmp.Or(err, fault)
		return float64(a.Strength*shift) > p.Target.Value, a.Possible
	})
	return low, high, err
}
