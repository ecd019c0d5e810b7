package rescue

import (
	"iter"
	"math"

	"minim/equipment"
	"minim/uncertainty/route"
)

// graduations are all volumes that an instrument can be read at or set to, from one on.
func graduations(k *equipment.Measure, from float64) iter.Seq[float64] {
	return func(yield func(mL float64) bool) {
		for at := from; ; at += k.Finest() {
			nearest := k.Nearest(at)
			if len(nearest) == 0 {
				return
			}
			mark := nearest[len(nearest)-1]
			if mark >= from*(1-slack) && !yield(mark) || mark >= k.Capacity*(1-slack) {
				return
			}
		}
	}
}

// near reports whether a strength that is so many times what is wanted may be inside the
// tolerance, and is worth working out.
func (r *rescuer) near(ratio float64) bool {
	return math.Abs(ratio-1) <= max(0.01, r.prep.HalfWidth())
}

// diluteFinely tries every graduation, from the first on, for one dilution of a part of a
// batch that is too strong by a factor: made up to a mark, or with measured solvent.
func (r *rescuer) diluteFinely(factor float64) {
	whole := 0.95 * r.now.MadeML // some rinses, some stays
	least := min(r.prep.Volume, whole*factor)
	for _, k := range r.vessels() {
		for mark := range graduations(k, least) {
			r.dilutePart(route.Step{Verb: route.MakeUpTo, Amount: mark, Measure: k}, mark/factor, whole)
			if r.isOver(dilutePart) {
				return
			}
		}
	}
	for _, d := range r.deliverers() {
		for part := range graduations(d, least/factor) {
			r.addToPart(route.Measuring(route.Take, d, part), factor, whole)
			if r.isOver(dilutePart) {
				return
			}
		}
	}
}

// dilutePart takes about so much of the batch, of which there is no more than a volume, and
// makes it up to a mark.
func (r *rescuer) dilutePart(makeUp route.Step, mL, whole float64) {
	for _, d := range r.deliverers() {
		for _, part := range d.Nearest(mL) {
			if part <= whole && r.near(part/mL) {
				r.try(dilutePart, route.Measuring(route.Take, d, part), makeUp)
			}
		}
	}
}

// addToPart dilutes a part of the batch by a factor with measured solvent.
func (r *rescuer) addToPart(take route.Step, factor, whole float64) {
	if take.Amount > whole || take.Amount*factor > r.largest {
		return
	}
	for _, d := range r.deliverers() {
		for _, solvent := range d.Nearest(take.Amount * (factor - 1)) {
			if r.near(take.Amount * factor / (take.Amount + solvent)) {
				r.try(dilutePart, take, route.Measuring(route.Add, d, solvent))
			}
		}
	}
}

// strengthenBeyond adds of a stronger solution more than is needed, a volume a that can be
// read better, and then the solvent that brings the whole back to the target:
//
//	w = (c_batch V + c_strong a)/c - V - a
func (r *rescuer) strengthenBeyond(s strong, is, wanted float64) {
	volume := r.now.MadeML
	for _, d := range r.deliverers() {
		for a := range graduations(d, volume*(wanted-is)/(s.concentration-wanted)) {
			solute := float64(is*volume) + float64(s.concentration*a)
			if a > s.left*(1+slack) || solute/wanted > r.largest {
				break
			}
			add := s.source
			add.Verb, add.Amount, add.Measure = route.Strengthen, a, d
			if r.addBack(add, solute, wanted); r.isOver(strengthenAndAdd) {
				return
			}
		}
	}
}

// addBack adds solvent to what holds so much solute, in g, and was strengthened by a step.
func (r *rescuer) addBack(strengthen route.Step, solute, wanted float64) {
	made := r.now.MadeML + strengthen.Amount
	for _, d := range r.deliverers() {
		for _, solvent := range d.Nearest(solute/wanted - made) {
			if r.near(solute / wanted / (made + solvent)) {
				r.try(strengthenAndAdd, all, strengthen, route.Measuring(route.Add, d, solvent))
			}
		}
	}
}
