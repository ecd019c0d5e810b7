package equipment

import (
	"fmt"
	"math"

	"minim/uncertainty"
)

// standardDrop is a drop of water from the standard dropper, in mL (USP <1101>,
// Ph. Eur. 2.1.1).
const standardDrop = 0.05

// Drops appends the volume of n drops of the solvent:
//
//	V = n (d + e_bias + e_rep/√n) f
//
// with d the drop of water and f the ratio of a drop of the solvent to one of
// water. By Tate's law a drop is as heavy as surface tension bears, so that f is
// the ratio of tension over density; the counts of an early dental handbook
// (60 drops of water, 146 of alcohol to 60 minims) give 0.41 for alcohol, Tate's
// law 0.39. It is taken as known within 15 %, the limit of USP <1101> for a
// dropper that is calibrated with its own liquid, and one for the whole bench.
// The scatter, when not stated, is 5 % of a drop (common practice, no source).
// The volume is that at 20 °C: a drop breaks off by its weight.
func (k *Measure) Drops(u Use, n float64) (uncertainty.Node, error) {
	if !(n >= 1) || n != math.Trunc(n) || math.IsInf(n, 1) {
		return 0, impossible("%v drops cannot be counted", n)
	}
	m := u.Model
	k.note(u, k.Capacity)
	drop := m.Sum(m.Constant(k.Capacity), k.bias(u, k.Capacity)...)
	s := k.Repeatability
	if !s.Known {
		s.S = 0.05 * k.Capacity
		u.Notes.Assume(fmt.Sprintf("the drops of the %s scatter by 5 %%", k.Name))
	}
	drop = m.Add(drop, m.Influence(uncertainty.Influence{
		Name: "scatter of the drops of the " + k.Name, Owner: u.Step, Group: k.Name, Unit: "mL",
		Distribution: s.distribution(s.S / math.Sqrt(n)), DegreesOfFreedom: s.DegreesOfFreedom, Assumed: !s.Known,
	}))
	volume := m.Multiply(m.Constant(n), drop)
	factor, err := k.dropOfSolvent(u)
	if err != nil {
		return 0, err
	}
	if factor != nil {
		volume = m.Multiply(volume, *factor)
	}
	return volume, nil
}

// DropVolume is the intended volume of one drop of a solvent, in mL.
func (k *Measure) DropVolume(s Solvent) float64 { return k.Capacity * dropRatio(s) }

func dropRatio(s Solvent) float64 {
	if s.isWater() || s.Tension == 0 || s.Density == 0 {
		return 1
	}
	w, _ := FindLiquid(water)
	return s.Tension / s.Density / (w.SurfaceTension / w.Density)
}

// dropOfSolvent appends f, or returns nil for water.
func (k *Measure) dropOfSolvent(u Use) (*uncertainty.Node, error) {
	s := u.Day.Solvent
	if s.isWater() {
		return nil, nil
	}
	if s.Tension == 0 || s.Density == 0 {
		return nil, impossible("the size of a drop of %s is not known; measure it another way", s.Name)
	}
	f := dropRatio(s)
	u.Notes.Assume(fmt.Sprintf("a drop of %s is %s of a drop of water, within 15 %%", s.Name, number(math.Round(100*f)/100, 9)))
	node := u.Model.Influence(uncertainty.Influence{
		Name: "size of a drop of " + s.Name, Owner: "the bench", Group: "drops of " + s.Name,
		Distribution: uncertainty.Rectangular{Low: 0.85 * f, High: 1.15 * f}, Nominal: f, Assumed: true,
	})
	return &node, nil
}
