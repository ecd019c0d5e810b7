package search

import (
	"minim/equipment"
	"minim/uncertainty/route"
)

// making is a way to make a solution: of solute, or of an aliquot.
type making struct {
	// taken is the aliquot, nil for a first solution; made is what it is made up to, or
	// what is added to it.
	taken, made *measurement
	// aliquot is the volume that it takes, volume what it makes, in mL, as
	// intended.
	aliquot, volume float64
	// ratio is the intended strength of the product over that of what it is
	// made from; for a first solution, that of an amount, 1/volume.
	ratio float64
	factor
	// measured: solvent is measured, not made up to a mark.
	measured bool
}

// pair lists the ways to make a solution at some marks, of which the dilutions come
// within a span. It gives up where those are too many.
func (b *Bench) pair(at tried, within span) (done bool, err error) {
	taken, err := b.factors(route.Take, at, b.prep.TakenFactor)
	if err != nil {
		return false, err
	}
	contained, err := b.factors(route.MakeUpTo, at, b.prep.ContainedFactor)
	if err != nil {
		return false, err
	}
	b.firsts, b.dilutions = nil, nil
	b.addFirsts(contained)
	return b.addDilutions(taken, contained, within), nil
}

// measurement is a measured volume and its factor, and the place of its measure in the kit.
type measurement struct {
	step route.Step
	factor
	place int
}

// factors lists what can be measured by steps of a verb.
func (b *Bench) factors(verb route.Verb, at tried, of func(route.Step) (route.Factor, error)) ([]measurement, error) {
	var list []measurement
	for place, k := range b.prep.Kit.Measures {
		if !suits(k, verb) {
			continue
		}
		for _, mark := range at[k] {
			s := route.Measuring(verb, k, mark)
			f, err := of(s)
			if _, no := equipment.WhyNot(err); no {
				continue
			}
			if err != nil {
				return nil, err
			}
			if verb == route.MakeUpTo && f.Low <= 0 || !f.Uninformative.None() {
				continue // so badly known that it could be nothing
			}
			list = append(list, measurement{s, b.keys.factor(f), place})
		}
	}
	return list, nil
}

func suits(k *equipment.Measure, verb route.Verb) bool {
	if verb == route.MakeUpTo {
		return k.Kind.Traits().Receives
	}
	return k.Kind.Traits().Delivers
}

func (b *Bench) addFirsts(contained []measurement) {
	for i := range contained {
		v := &contained[i]
		b.firsts = append(b.firsts, making{
			made: v, volume: v.step.Amount, ratio: 1 / v.step.Amount, factor: v.factor.inverse(),
		})
	}
}

// addDilutions lists the dilutions of which the ratio comes within a span; it returns
// false where those are too many.
func (b *Bench) addDilutions(taken, contained []measurement, within span) bool {
	add := func(a, v *measurement, volume, mean float64, of func() factor, measured bool) bool {
		if !within.meets(span{mean, mean}) {
			return true
		}
		b.dilutions = append(b.dilutions, making{
			taken: a, made: v, aliquot: a.step.Amount, volume: volume, ratio: a.step.Amount / volume, factor: of(), measured: measured,
		})
		return len(b.dilutions) <= mostPairs
	}
	for i := range taken {
		a := &taken[i]
		for j := range contained {
			v := &contained[j]
			if v.step.Amount > a.step.Amount &&
				!add(a, v, v.step.Amount, a.mean/v.mean, func() factor { return a.factor.times(v.factor.inverse()) }, false) {
				return false
			}
		}
		for j := range taken {
			w := &taken[j]
			if !b.options.filled && a.low+w.low > 0 && // else so badly known that it could be nothing
				!add(a, w, a.step.Amount+w.step.Amount, a.mean/(a.mean+w.mean), func() factor { return ofAdding(a.factor, w.factor) }, true) {
				return false
			}
		}
	}
	return true
}

// steps of a way to make a solution.
func (m *making) steps() []route.Step {
	made := m.made.step
	if m.measured && m.taken != nil {
		made = route.Measuring(route.Add, made.Measure, made.Amount)
	}
	if m.taken == nil {
		return []route.Step{made}
	}
	return []route.Step{m.taken.step, made}
}
