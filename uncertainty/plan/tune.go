package plan

import (
	"cmp"
	"math"
	"slices"

	"minim/equipment"
	"minim/uncertainty/policy"
	"minim/uncertainty/route"
)

// A route is tuned by rounder readings of the same instruments: other marks, within these factors of
// those that it has, and of the mass weighed what then brings it to the target, rounded as far as
// the tolerance leaves room for. So many combinations of marks are tried at most, the roundest
// first, and so many routes are kept.
const (
	leastMark, mostMark = 0.5, 2.0
	mostCombined        = 20000
	mostCombinations    = 10
	mostTuned           = 8
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

// tune adds rounder routes than one, which are assessed and not simulated.
func (t *tuner) tune() error {
	for _, marks := range t.combinations() {
		if len(t.tuned) >= mostTuned {
			return nil
		}
		if err := t.with(marks); err != nil {
			return err
		}
	}
	return nil
}

// combination is a reading for each step, with the sum of their roundness.
type combination struct {
	amounts   []float64
	roundness float64
}

// combinations of readings, the roundest first, and the route as it is.
func (t *tuner) combinations() []combination {
	list := []combination{{}}
	for i := range t.base.Route.Steps {
		s := &t.base.Route.Steps[i]
		choices := t.choices(s)
		if len(list)*len(choices) > mostCombined {
			choices = []float64{s.Amount}
		}
		var longer []combination
		for _, c := range list {
			for _, amount := range choices {
				round := c.roundness
				if digit, _ := s.Scale(); digit > 0 && !s.Verb.Traits().WeighsSolute {
					round += policy.RoundnessOf(amount)
				}
				longer = append(longer, combination{append(slices.Clip(c.amounts), amount), round})
			}
		}
		list = longer
	}
	slices.SortStableFunc(list, func(a, b combination) int { return cmp.Compare(a.roundness, b.roundness) })
	list = list[:min(len(list), mostCombinations)]
	as := combination{}
	for i := range t.base.Route.Steps {
		as.amounts = append(as.amounts, t.base.Route.Steps[i].Amount)
	}
	return append(list, as)
}

// choices are the amounts of a step that are no less round than that which it has.
func (t *tuner) choices(s *route.Step) []float64 {
	list := []float64{s.Amount}
	switch digit, _ := s.Scale(); {
	case digit == 0 || s.Verb.Traits().WeighsSolute:
	case s.Balance != nil:
		for _, m := range roundings(s.Amount, s.Balance, 0.1) {
			list = append(list, m)
		}
	case s.Measure != nil:
		for _, mark := range s.Measure.Marks(t.fine) {
			if mark != s.Amount && mark >= leastMark*s.Amount && mark <= mostMark*s.Amount && policy.RoundnessOf(mark) <= policy.RoundnessOf(s.Amount) {
				list = append(list, mark)
			}
		}
	}
	return list
}

// with tries some readings, with the mass of solute that they ask for, the roundest first.
func (t *tuner) with(c combination) error {
	r := &route.Route{Steps: slices.Clone(t.base.Route.Steps)}
	weighed := -1
	for i := range r.Steps {
		r.Steps[i].Amount = c.amounts[i]
		if r.Steps[i].Verb == route.Weigh {
			weighed = i
		}
	}
	aims, err := t.Assess(r, t.coverage)
	if err != nil || !aims.Possible || !(aims.Intended > 0) || !aims.Enough(t.Volume) || aims.LeftOverML > t.most {
		return err
	}
	if weighed < 0 {
		return t.keep(r)
	}
	mass, on := r.Steps[weighed].Amount*t.Target.Value/aims.Intended, r.Steps[weighed].Balance
	for _, m := range roundings(mass, on, t.room()) {
		if err := t.keep(r.With(weighed, m)); err != nil {
			return err
		}
	}
	return nil
}

// room is the part of the mass by which a rounded one may differ: three quarters of the way to the
// nearer limit, or 5 % without a tolerance.
func (t *tuner) room() float64 {
	if len(t.Tolerances) == 0 {
		return 0.05
	}
	limits := t.Tolerances[0].Limits
	return 0.75 * min(t.Target.Value-limits.Lower, limits.Upper-t.Target.Value) / t.Target.Value
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

// roundings are readings of a balance near to a mass, within a part of it, the roundest first: the
// nearest multiple of each power of ten and of five times it.
func roundings(mass float64, on *equipment.Balance, within float64) (list []float64) {
	for power := 6; power >= -7; power-- {
		for _, step := range []float64{math.Pow10(power), 5 * math.Pow10(power-1)} {
			if step < on.Readability*(1-1e-9) {
				continue
			}
			m := on.Displayed(math.Round(math.Round(mass/step) * step / on.Readability))
			if m > 0 && m <= on.Capacity && math.Abs(m-mass) <= within*mass && !slices.Contains(list, m) {
				list = append(list, m)
			}
		}
	}
	return list
}
