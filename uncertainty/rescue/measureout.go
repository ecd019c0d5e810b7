package rescue

import (
	"math"
	"slices"

	"minim/equipment"
	"minim/uncertainty/route"
)

// mostFills of one instrument for one volume.
const mostFills = 4

// measured lists the ways to measure a volume out with steps of a verb: with one reading
// of an instrument, or with full fills of one and a reading of any. Of readings, the two
// nearest are tried.
func (r *rescuer) measured(verb route.Verb, mL float64) (ways [][]route.Step) {
	for _, k := range r.deliverers() {
		fills := math.Floor(mL/k.Capacity + slack)
		if fills > mostFills {
			continue
		}
		full := slices.Repeat([]route.Step{route.Measuring(verb, k, k.Capacity)}, int(fills))
		rest := mL - float64(fills*k.Capacity)
		if fills > 0 {
			ways = append(ways, full)
		}
		for _, other := range r.deliverers() {
			if fills == 0 && other != k {
				continue // that is a way of the other
			}
			for _, mark := range other.Nearest(rest) {
				ways = append(ways, append(slices.Clone(full), route.Measuring(verb, other, mark)))
			}
		}
	}
	return ways
}

// deliverers are the instruments that measure a volume out by a reading.
func (r *rescuer) deliverers() []*equipment.Measure {
	return slices.DeleteFunc(slices.Clone(r.prep.Kit.Measures), func(k *equipment.Measure) bool {
		return !k.Kind.Traits().Delivers || k.Kind.Traits().Counts
	})
}
