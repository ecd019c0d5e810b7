package rescue

import (
	"slices"

	"minim/equipment"
	"minim/uncertainty/plan"
	"minim/uncertainty/route"
)

// strong is a solution that can be added to a batch that is too weak: what a step then
// says of it, its concentration in g/mL, and how much there is of it, in mL.
type strong struct {
	source        route.Step
	concentration float64
	left          float64
}

// strengthen tries the ways to strengthen a batch: with stocks, with stronger solutions
// that are left from making it, with solute, and where none of these is sure enough, with
// more than is needed of a stronger solution, and solvent, or with one that is diluted first.
func (r *rescuer) strengthen(is, wanted float64) {
	r.strengthenAll(is, wanted)
	if content := r.prep.SoluteContent() - float64(wanted*r.prep.SpecificVolume()); content > 0 && r.prep.CountsMass() && r.prep.NotPure().None() {
		r.addSolute(r.now.MadeML*(wanted-is)/content, is/wanted)
	}
	r.workOut(strengthenAll, addMore)
	if r.passed {
		return
	}
	r.strengthenBeyond(is, wanted)
	r.diluteFirst(is, wanted)
	r.workOut(strengthenAndAdd, diluteFirst)
}

// strongerThan lists what is stronger than wanted: stocks, and solutions that are left.
func (r *rescuer) strongerThan(wanted float64) (list []strong, err error) {
	for _, k := range r.prep.Stocks {
		c, err := r.prep.StockConcentration(k)
		if _, no := equipment.WhyNot(err); no {
			continue
		}
		if err != nil {
			return nil, err
		}
		if itself := len(r.batch.Steps) == 1 && r.batch.Steps[0].Stock == k; !itself {
			list = append(list, strong{route.Step{Stock: k}, c, k.MostML()})
		}
	}
	solutions, err := r.prep.Solutions(r.batch)
	if err != nil {
		return nil, err
	}
	for _, s := range solutions[:max(0, len(solutions)-1)] {
		list = append(list, strong{route.Step{From: s.Step}, s.Concentration, s.LeftML})
	}
	return slices.DeleteFunc(list, func(s strong) bool { return s.concentration <= wanted*(1+slack) }), nil
}

// mostAdded is how many times what brings a batch to the target may be added to it.
const mostAdded = 5

// strengthenAll adds of a stronger solution what brings the batch to the target:
//
//	a = V (c - c_batch)/(c_strong - c)
func (r *rescuer) strengthenAll(is, wanted float64) {
	volume := r.now.MadeML
	for _, s := range r.stronger {
		needed := func(times float64) float64 { return r.needed(is, float64(wanted*times), s.concentration, s.left) }
		to := min(s.left, needed(1+r.within()), mostAdded*needed(1))
		r.measured(route.Strengthen, needed(1-r.within()), needed(1), to, func(mL float64, steps []route.Step) {
			if mL > s.left*(1+slack) {
				return
			}
			steps = slices.Clone(steps)
			for i := range steps {
				steps[i].Stock, steps[i].From = s.source.Stock, s.source.From
			}
			has := float64(is*volume) + float64(s.concentration*mL)
			r.consider(strengthenAll, volume+mL, has/(volume+mL)/wanted, 0, append([]route.Step{all}, steps...)...)
		})
	}
}

// needed is how much brings the batch from one concentration to another, of a solution of which there is so much; all
// where it is no stronger than that.
func (r *rescuer) needed(is, to, strong, left float64) float64 {
	if to >= strong {
		return left
	}
	return max(0, r.now.MadeML*(to-is)/(strong-to))
}

// addSolute dissolves in the batch, which has so many times what is wanted, a mass of solute that brings it there.
func (r *rescuer) addSolute(grams, has float64) {
	for _, k := range r.prep.Kit.Balances {
		for _, m := range plan.Roundings(grams, k, r.within()/max(1-has, slack)) {
			r.consider(addMore, r.now.MadeML, has+float64((1-has)*m/grams), 0, all, route.Step{Verb: route.AddSolute, Amount: m, Balance: k})
		}
	}
}

// strengthenBeyond adds of a stronger solution more than is needed, a volume a that can be
// read better, or that makes as much as is wanted, and then the solvent that brings the whole back to the target:
//
//	w = (c_batch V + c_strong a)/c - V - a
func (r *rescuer) strengthenBeyond(is, wanted float64) {
	volume := r.now.MadeML
	for _, s := range r.stronger {
		least := max(0, volume*(wanted-is)/(s.concentration-wanted))
		most := min(s.left, (float64(r.largest*wanted)-float64(volume*is))/s.concentration)
		for _, d := range r.deliverers() {
			for _, a := range marks(d, least, most) {
				if a < least*(1-slack) || a > most*(1+slack) {
					continue
				}
				add := s.source
				add.Verb, add.Amount, add.Measure = route.Strengthen, a, d
				r.addBack(add, float64(is*volume)+float64(s.concentration*a), wanted)
			}
		}
	}
}

// addBack adds solvent to what holds so much solute, in g, and was strengthened by a step.
func (r *rescuer) addBack(strengthen route.Step, solute, wanted float64) {
	made, all0 := r.now.MadeML+strengthen.Amount, solute/wanted
	for _, d := range r.deliverers() {
		for _, solvent := range marks(d, r.least(all0)-made, r.most(all0)-made) {
			r.consider(strengthenAndAdd, made+solvent, all0/(made+solvent), 0, all, strengthen, route.Measuring(route.Add, d, solvent))
		}
	}
}

// diluteFirst dilutes a stronger solution, at marks that are numbered, x up to v, and adds of that what brings the batch to
// the target:
//
//	a = V (c - c_batch)/(c_strong x/v - c)
func (r *rescuer) diluteFirst(is, wanted float64) {
	for _, s := range r.stronger {
		for _, d := range r.deliverers() {
			for _, x := range d.Marks(false) {
				if x > s.left {
					break
				}
				for _, k := range r.vessels() {
					for _, v := range k.Marks(false) {
						if strength := s.concentration * x / v; v > x && strength > wanted*(1+slack) {
							take := s.source
							take.Verb, take.Amount, take.Measure = route.Take, x, d
							r.addDiluted(is, wanted, strength, take, route.Step{Verb: route.MakeUpTo, Amount: v, Measure: k})
						}
					}
				}
			}
		}
	}
}

// addDiluted adds to all of the batch of a solution that two steps make, of that strength in g/mL.
func (r *rescuer) addDiluted(is, wanted, strength float64, take, makeUp route.Step) {
	volume, made := r.now.MadeML, len(r.batch.Steps)
	batch := route.Step{Verb: route.TakeAll, From: made}
	if r.bought {
		batch.From, batch.Stock = 0, r.batch.Steps[0].Stock
	}
	from := r.needed(is, float64(wanted*(1-r.within())), strength, makeUp.Amount)
	to := min(makeUp.Amount, r.needed(is, float64(wanted*(1+r.within())), strength, makeUp.Amount))
	for _, d := range r.deliverers() {
		for _, a := range marks(d, from, to) {
			if a > float64(stays*makeUp.Amount) {
				break
			}
			add := route.Measuring(route.Strengthen, d, a)
			add.From = made + 2
			has := float64(is*volume) + float64(strength*a)
			r.consider(diluteFirst, volume+a, has/(volume+a)/wanted, makeUp.Amount-a, take, makeUp, batch, add)
		}
	}
}
