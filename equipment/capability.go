package equipment

import (
	"math"

	"minim/uncertainty"
)

// coverage probability for which a least mass or volume is stated.
const coverage = 0.95

// alone is a use of an instrument by itself, at 20 °C.
func alone() Use {
	return Use{Model: new(uncertainty.Model), Notes: new(Notes), Step: "one use"}
}

// Uncertainty is the standard uncertainty of one weighing, in g.
func (b *Balance) Uncertainty(reading float64) float64 {
	u := alone()
	return propagated(u, func() (uncertainty.Node, error) { return b.Weigh(u, reading) }).StandardUncertainty
}

// Least is the least mass in g that the balance can show and weighs with a
// relative expanded uncertainty of at most share; ok is false when it has none.
func (b *Balance) Least(share float64) (g float64, ok bool) {
	steps := math.Floor(b.Capacity/b.Readability*(1+1e-12) + 1e-9)
	shown := func(n float64) float64 { return n * b.Readability }
	for n := 1.0; n <= steps; {
		needed := math.Ceil(expanded(b.Uncertainty(shown(n)))/share/b.Readability - 1e-9)
		if needed <= n {
			return shown(n), true
		}
		n = needed
	}
	return 0, false
}

// Uncertainty is the standard uncertainty of one use at a mark, in mL:
// delivering for a pipette, filling for a vessel.
func (k *Measure) Uncertainty(mark float64) float64 {
	u := alone()
	use := k.Deliver
	if k.Kind.Receives() {
		use = k.Contain
	}
	return propagated(u, func() (uncertainty.Node, error) { return use(u, mark) }).StandardUncertainty
}

// Least is the least volume in mL, at a line of the scale, that it measures
// with a relative expanded uncertainty of at most share; ok is false when it
// has none.
func (k *Measure) Least(share float64) (mL float64, ok bool) {
	division := k.Division
	if division == 0 {
		division = k.Capacity
	}
	for n := 1.0; n*division <= k.Capacity*(1+1e-12); n++ {
		if mark := n * division; expanded(k.Uncertainty(mark)) <= share*mark {
			return mark, true
		}
	}
	return 0, false
}

func expanded(u float64) float64 {
	return uncertainty.CoverageFactor(coverage, math.Inf(1)) * u
}

func propagated(u Use, append func() (uncertainty.Node, error)) uncertainty.Analytic {
	node, err := append()
	if err != nil {
		panic("equipment: " + err.Error())
	}
	a, err := u.Model.Propagate(node, coverage)
	if err != nil {
		panic("equipment: " + err.Error())
	}
	return a
}
