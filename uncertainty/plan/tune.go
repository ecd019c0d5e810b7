package plan

import (
	"cmp"
	"math"
	"slices"

	"minim/equipment"
	"minim/uncertainty/policy"
	"minim/uncertainty/route"
	"minim/uncertainty/search"
)

// A route is tuned by rounder readings of the same instruments: other marks, within these factors of
// those that it has, and of the mass weighed what then brings it to the target, rounded as far as
// the tolerance leaves room for. So many combinations of marks are made, of which the roundest are
// aimed; of these so many are tried, the roundest first, and so many that are good enough kept.
const (
	leastMark, mostMark = 0.5, 2.0
	nearMass            = 0.1 // of what is weighed of a solution or with solvent
	mostCombined        = 4000
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
	// most may be left over, in mL; least is the chance that a route must have; strongest is the
	// concentration that no solution may pass, in g/mL.
	most, least, strongest float64
	tuned                  []route.Result
}

// combination is a route with other readings, and how round they are.
type combination struct {
	*route.Route
	roundness float64
}

// tune adds rounder routes than one, which are assessed and not simulated.
func (t *tuner) tune() error {
	list, err := t.combinations()
	for i := 0; err == nil && i < min(len(list), mostTried) && len(t.tuned) < mostTuned; i++ {
		err = t.keep(list[i].Route)
	}
	return err
}

// combinations of marks, with masses that bring them to the target, the roundest first.
func (t *tuner) combinations() (list []combination, err error) {
	marks := t.marks()
	for _, of := range marks[:min(len(marks), mostAimed)] {
		r := &route.Route{Steps: slices.Clone(t.base.Route.Steps)}
		for at := range r.Steps {
			r.Steps[at].Amount = of.amounts[at]
		}
		aim, err := t.Aim(r)
		if err != nil {
			return nil, err
		}
		if !aim.Possible || !(aim.Strength > 0) || aim.MadeML < t.Volume*(1-1e-9) || aim.LeftOverML > t.most {
			continue
		}
		list = append(list, t.aimed(r, t.Target.Value/aim.Strength)...)
	}
	slices.SortStableFunc(list, func(a, b combination) int { return cmp.Compare(a.roundness, b.roundness) })
	return list, nil
}

// aimed are a route with so many times the mass of solute, rounded.
func (t *tuner) aimed(r *route.Route, times float64) (list []combination) {
	weighed := slices.IndexFunc(r.Steps, func(s route.Step) bool { return s.Verb == route.Weigh })
	if weighed < 0 {
		return []combination{{r, policy.RoundnessIn(r.Readings())}}
	}
	for _, m := range roundings(r.Steps[weighed].Amount*times, r.Steps[weighed].Balance, t.room()) {
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

// marks are the readings of all steps, the roundest first; the mass of solute is that of the route.
func (t *tuner) marks() []readings {
	list := []readings{{}}
	for i := range t.base.Route.Steps {
		s := &t.base.Route.Steps[i]
		choices := t.choices(s)
		if len(list)*len(choices) > mostCombined {
			choices = choices[:1]
		}
		var longer []readings
		for _, amount := range choices {
			round := policy.RoundnessOf(amount)
			for _, of := range list {
				longer = append(longer, readings{append(slices.Clip(of.amounts), amount), of.roundness + round})
			}
		}
		list = longer
	}
	slices.SortStableFunc(list, func(a, b readings) int { return cmp.Compare(a.roundness, b.roundness) })
	return list
}

// choices are the amounts of a step that are no less round than that which it has.
func (t *tuner) choices(s *route.Step) []float64 {
	list := []float64{s.Amount}
	switch digit, _ := s.Scale(); {
	case digit == 0 || s.Verb.Traits().WeighsSolute:
	case s.Balance != nil:
		list = append(list, roundings(s.Amount, s.Balance, nearMass)...)
	case s.Measure != nil:
		for _, mark := range s.Measure.Marks(t.fine) {
			if mark != s.Amount && mark >= leastMark*s.Amount && mark <= mostMark*s.Amount && policy.RoundnessOf(mark) <= policy.RoundnessOf(s.Amount) {
				list = append(list, mark)
			}
		}
	}
	return list
}

// room is the part of the mass by which a rounded one may differ: three quarters of the way to the
// nearer limit, or 5 % without a tolerance.
func (t *tuner) room() float64 {
	if len(t.Tolerances) == 0 {
		return 0.05
	}
	limits := t.Tolerances[0].Limits
	return float64(0.75 * min(t.Target.Value-limits.Lower, limits.Upper-t.Target.Value) / t.Target.Value)
}

// keep takes a route that can be done and is good enough, and was not tried before.
func (t *tuner) keep(r *route.Route) error {
	if slices.ContainsFunc(t.tuned, func(o route.Result) bool { return sameAmounts(o.Route, r) }) || sameAmounts(r, t.base.Route) {
		return nil
	}
	found, err := t.Assess(r, t.coverage)
	if err != nil || !found.Possible || !found.Informative || !found.Enough(t.Volume) || found.LeftOverML > t.most {
		return err
	}
	if len(found.Inside) > 0 && found.Inside[0].Normal < t.least {
		return nil
	}
	if !search.Near(t.Prep, found.Analytic.Value) {
		return nil
	}
	if weak, err := t.weakEnough(r); err != nil || !weak {
		return err
	}
	if err := t.Misread(&found); err != nil {
		return err
	}
	t.tuned = append(t.tuned, found)
	return nil
}

// weakEnough reports whether no solution on the way is stronger than may be made.
func (t *tuner) weakEnough(r *route.Route) (bool, error) {
	list, err := t.Solutions(r)
	return !slices.ContainsFunc(list, func(s route.Solution) bool { return s.Concentration > t.strongest }), err
}

// sameAmounts reports whether two routes with the same steps have the same readings.
func sameAmounts(a, b *route.Route) bool {
	return slices.EqualFunc(a.Steps, b.Steps, func(a, b route.Step) bool { return route.SameVolume(a.Amount, b.Amount) })
}

// roundings are readings of a balance near to a mass, within a part of it, the coarsest first: the
// multiples next to it of each power of ten and of five times it.
func roundings(mass float64, on *equipment.Balance, within float64) (list []float64) {
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
