package equipment

import (
	"cmp"
	"sort"

	"minim/uncertainty"
)

// coverage probability for which a least mass or volume is stated.
const coverage = 0.95

// alone is a use of an instrument by itself, at 20 °C.
func alone() Use {
	return Use{Model: new(uncertainty.Model), Notes: new(Notes), Step: uncertainty.Owner{Kind: uncertainty.OneUse}, Day: Day{Solvent: Solvent{Name: water}}}
}

// Uncertainty is the standard uncertainty of one weighing, in g.
func (b *Balance) Uncertainty(reading float64) float64 { return b.once(reading).StandardUncertainty }

// once evaluates one weighing.
func (b *Balance) once(reading float64) uncertainty.Analytic {
	u := alone()
	mass, err := b.Weigh(u, reading, u.Step, b.PanWith(Stated{}, true))
	return propagated(u, mass, err)
}

// Least is the least mass in g that the balance can show and weighs with a
// relative expanded uncertainty of at most share; ok is false when it has none.
func (b *Balance) Least(share float64) (g float64, ok bool) {
	return least(share, b.Readability, b.Capacity, b.once)
}

// Uncertainty is the standard uncertainty of one use at a mark, in mL:
// delivering for a pipette, filling for a vessel, one drop for a dropper.
func (k *Measure) Uncertainty(mark float64) float64 { return k.once(mark).StandardUncertainty }

// once evaluates one use.
func (k *Measure) once(mark float64) uncertainty.Analytic {
	u := alone()
	u.Emptying = k.AsMeant(mark)
	use := k.Deliver
	switch {
	case k.Kind.Traits().Receives:
		use = k.Contain
	case k.Kind.Traits().Counts:
		u.Day.Solvent.Name = k.dropKnownBy()
		use = func(u Use, _ float64) (uncertainty.Node, error) { return k.Drops(u, 1) }
	}
	volume, err := use(u, mark)
	return propagated(u, volume, err)
}

// Least is the least volume in mL, at a line of the scale, that it measures
// with a relative expanded uncertainty of at most share; ok is false when it
// has none. What can be set to any volume is tried in thousandths of its
// capacity.
func (k *Measure) Least(share float64) (mL float64, ok bool) {
	division := cmp.Or(k.Division, k.Capacity)
	if is := k.Kind.Traits(); k.Division == 0 && is.Set && !is.Counts {
		division = k.Capacity / 1000
	}
	return least(share, division, k.Capacity, k.once)
}

// least finds the least multiple of a step, up to the capacity, that is
// measured with U at most share of it. The relative uncertainty never grows
// with the amount, so that the search can halve the range.
func least(share, step, capacity float64, once func(float64) uncertainty.Analytic) (amount float64, ok bool) {
	steps := int(float64(capacity/step*(1+1e-12)) + 1e-9)
	n := 1 + sort.Search(steps, func(i int) bool {
		amount := float64(i+1) * step
		return once(amount).ExpandedUncertainty <= share*amount*(1+1e-12)
	})
	if n > steps {
		return 0, false
	}
	return float64(n) * step, true
}

func propagated(u Use, node uncertainty.Node, err error) (a uncertainty.Analytic) {
	if err == nil {
		a, err = u.Model.Propagate(node, coverage)
	}
	if err != nil {
		panic("equipment: " + err.Error())
	}
	return a.Mixed()
}
