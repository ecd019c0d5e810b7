package equipment

import (
	"cmp"
	"math"

	"minim/uncertainty"
)

// standardDrop is a drop of water from the standard dropper, in mL (USP <1101>,
// Ph. Eur. 2.1.1).
const standardDrop = 0.05

// Drops appends the volume of n drops of a liquid:
//
//	V = n (d + e_bias + e_rep/√n) f
//
// with d the drop that the dropper is known by, of water unless the kit names another
// liquid, and f the ratio of a drop of this liquid to one of that: see [Measure.ratio].
// The scatter, when not stated, is 5 % of a drop (common practice, no source).
// The volume is that at 20 °C: a drop breaks off by its weight.
func (k *Measure) Drops(u Use, n float64) (uncertainty.Node, error) {
	if !(n >= 1) || n != math.Trunc(n) || math.IsInf(n, 1) {
		return 0, Cannot("not-counted-in-drops", "", n)
	}
	f, err := k.ratio(droppedLiquid{cmp.Or(u.Solution, u.Day.Solvent.Name, water), u.Day.Solvent, u.Solution != ""})
	if err != nil {
		return 0, err
	}
	m := u.Model
	own := k.ownAt(u, k.Capacity)
	k.note(u, k.Capacity, own)
	drop := m.Add(k.known(u, sizeOfDrop, k.Capacity, "mL", k.groundOfLimit()), k.bias(u, k.Capacity, own)...)
	s := k.Repeatability.nearest(k.Capacity)
	if !s.Known {
		s.S = 0.05 * k.Capacity
		u.Notes.Assume("scatter-of-drops", k.Name)
	}
	s.noteReadings(u.Notes, k.Name, k.Capacity, showML)
	scatter := s.scattering(k.ofUse(u, dropScatter, nil), k.Name, s.S/math.Sqrt(n), k.Capacity)
	scatter.Assumed = !s.Known
	volume := m.Multiply(m.Constant(n), m.Add(drop, m.Influence(scatter)))
	if f.low == f.high {
		return volume, nil
	}
	return m.Multiply(volume, f.append(u, k)), nil
}
