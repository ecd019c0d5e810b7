package plan

import (
	"cmp"
	"math"
	"slices"

	"minim/equipment"
	"minim/uncertainty/contest"
	"minim/uncertainty/policy"
	"minim/uncertainty/route"
	"minim/uncertainty/search"
)

// A route is tuned by rounder readings of the same instruments: other marks, within these factors of
// those that it has, and of the mass weighed what then brings it to the target, rounded as far as
// the tolerance leaves room for. So many marks of a step and combinations of marks are made, the
// roundest, of which so many are aimed that may meet the target; of these so many are tried, the roundest
// first, and so many that are good enough kept.
const (
	leastMark, mostMark = 0.5, 2.0
	nearMass            = 0.1 // of what is weighed of a solution or with solvent
	mostChoices         = 12
	mostCombined        = 2000
	mostAimed           = 120
	mostTried           = 40
	mostTuned           = 6
)

// tuner finds rounder readings for one route.
type tuner struct {
	*route.Prep
	coverage float64
	fine     bool
	base     *route.Result
	// most may be left over, in mL; least is the chance that a route must have.
	most, least float64
	limits      route.Limits
	tuned       []route.Result
}

// combination is a route with other readings, and how round they are.
type combination struct {
	*route.Route
	roundness float64
}

// tune adds rounder routes than one, which are assessed and not simulated. They are tried in the order of how
// round they are; marks are aimed at the target once a mass may make them the next.
func (t *tuner) tune() error {
	marks := t.marks()
	least, aimed := t.leastRoundness(marks), 0
	var waiting []combination
	for tried := 0; tried < mostTried && len(t.tuned) < mostTuned; tried++ {
		for ; aimed < len(marks) && (len(waiting) == 0 || waiting[0].roundness > least[aimed]); aimed++ {
			more, err := t.combinations(marks[aimed])
			if err != nil {
				return err
			}
			waiting = append(waiting, more...)
			slices.SortStableFunc(waiting, func(a, b combination) int { return cmp.Compare(a.roundness, b.roundness) })
		}
		if len(waiting) == 0 {
			return nil
		}
		if err := t.keep(waiting[0].Route); err != nil {
			return err
		}
		waiting = waiting[1:]
	}
	return nil
}

// combinations of marks with masses that bring them to the target.
func (t *tuner) combinations(r *route.Route) ([]combination, error) {
	aim, err := t.Aim(r)
	if err != nil || !aim.Possible || !(aim.Strength > 0) || aim.MadeML < t.Volume*(1-1e-9) || aim.LeftOverML > t.most {
		return nil, err
	}
	return t.aimed(r, t.Target.Value/float64(aim.Strength*t.shift())), nil
}

// leastRoundness is that which these marks, or any after them, have at the least with a mass of one digit.
func (t *tuner) leastRoundness(marks []*route.Route) []float64 {
	least := make([]float64, len(marks))
	for i := len(marks) - 1; i >= 0; i-- {
		least[i] = policy.RoundnessIn(marks[i].Readings())
		if at := weighedIn(marks[i]); at >= 0 {
			least[i] += 1 - policy.RoundnessOf(marks[i].Steps[at].Amount)
		}
		if i+1 < len(marks) {
			least[i] = min(least[i], least[i+1])
		}
	}
	return least
}

// weighedIn is the place of the step that weighs solute, -1 without one.
func weighedIn(r *route.Route) int {
	return slices.IndexFunc(r.Steps, func(s route.Step) bool { return s.Verb == route.Weigh })
}

// shift is by what the strength is expected to be more than where the steps aim.
func (t *tuner) shift() float64 {
	if t.base.Intended > 0 {
		return t.base.Analytic.Value / t.base.Intended
	}
	return 1
}

// aimed are a route with so many times the mass of solute, rounded.
func (t *tuner) aimed(r *route.Route, times float64) (list []combination) {
	weighed := weighedIn(r)
	if weighed < 0 {
		return []combination{{r, policy.RoundnessIn(r.Readings())}}
	}
	for _, m := range Roundings(r.Steps[weighed].Amount*times, r.Steps[weighed].Balance, t.room()) {
		other := r.With(weighed, m)
		list = append(list, combination{other, policy.RoundnessIn(other.Readings())})
	}
	return list
}

// readings are amounts of all steps, and how round they are.
type readings struct {
	amounts   []float64
	roundness float64
}

// marks are routes with other readings, the roundest first; the mass of solute is that of the route.
// Without one, only those count that may meet the target.
func (t *tuner) marks() (routes []*route.Route) {
	list := []readings{{}}
	for i := range t.base.Route.Steps {
		var longer []readings
		for _, amount := range t.choices(i) {
			round := policy.RoundnessOf(amount)
			for _, of := range list {
				longer = append(longer, readings{append(slices.Clip(of.amounts), amount), of.roundness + round})
			}
		}
		slices.SortStableFunc(longer, func(a, b readings) int { return cmp.Compare(a.roundness, b.roundness) })
		list = longer[:min(len(longer), mostCombined)]
	}
	for _, of := range list {
		r := &route.Route{Steps: slices.Clone(t.base.Route.Steps)}
		for at := range r.Steps {
			r.Steps[at].Amount = of.amounts[at]
		}
		if len(routes) < mostAimed && t.near(r) {
			routes = append(routes, r)
		}
	}
	return routes
}

// near reports whether a route meets the target about as its marks say, if no mass can be chosen.
func (t *tuner) near(r *route.Route) bool {
	if r.Steps[0].Verb == route.Weigh {
		return true
	}
	strength := t.base.Intended * byMarks(r) / byMarks(t.base.Route)
	return math.Abs(strength/t.Target.Value-1) <= t.room()+1e-9
}

// byMarks is a number that the strength of a route goes with, as far as its amounts decide.
func byMarks(r *route.Route) float64 {
	amount, in := 1.0, 1.0 // of solute, and of the solution that it is in
	for i := range r.Steps {
		s := &r.Steps[i]
		switch is := s.Verb.Traits(); {
		case s.Verb == route.Add:
			in += s.Amount
		case is.FromSolution:
			amount, in = amount/in*s.Amount, s.Amount
		case is.BringsSolute && s.Amount > 0:
			amount = s.Amount
		case s.Amount > 0:
			in = s.Amount
		}
	}
	return amount / in
}

// choices are the amounts of a step that are no less round than that which it has, that first; the last
// makes as much as is wanted.
func (t *tuner) choices(at int) []float64 {
	s, least := &t.base.Route.Steps[at], 0.0
	if at == len(t.base.Route.Steps)-1 && s.Verb != route.Add {
		least = s.Amount * t.Volume / t.base.MadeML * (1 - 1e-9)
	}
	var list []float64
	switch digit, _ := s.Scale(); {
	case digit == 0 || s.Verb.Traits().WeighsSolute:
	case s.Balance != nil:
		list = Roundings(s.Amount, s.Balance, nearMass)
	case s.Measure != nil:
		list = s.Measure.Marks(t.fine)
	}
	list = slices.DeleteFunc(list, func(x float64) bool {
		return x == s.Amount || x < max(least, leastMark*s.Amount) || x > mostMark*s.Amount || policy.RoundnessOf(x) > policy.RoundnessOf(s.Amount)
	})
	slices.SortStableFunc(list, func(a, b float64) int {
		return cmp.Or(cmp.Compare(policy.RoundnessOf(a), policy.RoundnessOf(b)), cmp.Compare(math.Abs(a-s.Amount), math.Abs(b-s.Amount)))
	})
	return append([]float64{s.Amount}, list[:min(len(list), mostChoices)]...)
}

// room is the part of the mass by which a rounded one may differ: see [contest.Room]; without a tolerance a quarter
// of what the route holds the target within.
func (t *tuner) room() float64 {
	if len(t.Tolerances) == 0 {
		return t.base.HoldsWithin / 4
	}
	return contest.Room(t.Prep)
}

// keep takes a route that can be done and is good enough, and was not tried before.
func (t *tuner) keep(r *route.Route) error {
	if slices.ContainsFunc(t.tuned, func(o route.Result) bool { return sameAmounts(o.Route, r) }) || sameAmounts(r, t.base.Route) {
		return nil
	}
	found, err := t.Assess(r, t.coverage)
	if err != nil || !found.Possible || !found.Informative || !found.Enough(t.Volume) || found.LeftOverML > t.most || !contest.LeavesEnough(&found) {
		return err
	}
	if len(found.Inside) > 0 && found.Inside[0].Normal < t.least || len(found.Inside) == 0 && bestWithin(t.Prep, &found) > 1.05*t.base.HoldsWithin {
		return nil
	}
	if !search.Near(t.Prep, found.Analytic.Value) || contest.Elsewhere(t.Prep, &found) {
		return nil
	}
	if weak, err := contest.WeakEnough(t.Prep, t.limits, r); err != nil || !weak {
		return err
	}
	if err := t.Misread(&found); err != nil {
		return err
	}
	t.tuned = append(t.tuned, found)
	return nil
}

// sameAmounts reports whether two routes with the same steps have the same readings.
func sameAmounts(a, b *route.Route) bool {
	return slices.EqualFunc(a.Steps, b.Steps, func(a, b route.Step) bool { return route.SameVolume(a.Amount, b.Amount) })
}

// Roundings are readings of a balance near to a mass, within a part of it, the coarsest first: the
// multiples next to it of each power of ten and of five times it.
func Roundings(mass float64, on *equipment.Balance, within float64) (list []float64) {
	for power := 6; power >= -7; power-- {
		for _, step := range []float64{math.Pow10(power), 5 * math.Pow10(power-1)} {
			if step < on.Readability*(1-1e-9) {
				continue
			}
			for _, n := range []float64{math.Round(mass / step), math.Ceil(mass / step), math.Floor(mass / step)} {
				m := on.Displayed(math.Round(n * step / on.Readability))
				if m > 0 && m <= on.Capacity && math.Abs(m-mass) <= within*mass && !slices.Contains(list, m) {
					list = append(list, m)
				}
			}
		}
	}
	return list
}
