package rescue

import (
	"math"

	"minim/equipment"
	"minim/report/words/note"
	"minim/uncertainty"
	"minim/uncertainty/plan"
	"minim/uncertainty/route"
	"minim/uncertainty/search"
)

var all = route.Step{Verb: route.TakeAll}

// weaken tries the ways to dilute a batch that is too strong by a factor. Where nothing simpler is sure enough and
// makes enough, a stronger solution is added besides, and two dilutions of a part are searched.
func (r *rescuer) weaken(factor float64) {
	r.fillUp(factor)
	r.addToAll(factor)
	r.dilutePart(factor)
	r.weighPart()
	r.workOut(fillUp, addSolvent, dilutePart, weighPart)
	if is, wanted := r.concentrations(); !r.passed && r.now.MadeML*factor < r.prep.Volume { // there is not enough of it
		r.strengthenBeyond(is, wanted)
		r.workOut(strengthenAndAdd)
	}
	if !r.passed {
		r.searchTwice()
	}
}

// aside is what is set aside of the batch where so much of it is used: what stays in a bottle is not left over.
func (r *rescuer) aside(used float64) float64 {
	if r.bought {
		return 0
	}
	return r.now.MadeML - used
}

// fillUp makes all of the batch up to a mark.
func (r *rescuer) fillUp(factor float64) {
	wanted := r.now.MadeML * factor
	for _, k := range r.vessels() {
		for _, mark := range marks(k, r.least(wanted), r.most(wanted)) {
			if mark <= r.now.MadeML {
				continue
			}
			r.consider(fillUp, mark, wanted/mark, 0, all, route.Step{Verb: route.MakeUpTo, Amount: mark, Measure: k})
		}
	}
}

// least and most are by how much an amount that is wanted may be less, and more.
func (r *rescuer) least(wanted float64) float64 { return wanted / (1 + r.within()) }
func (r *rescuer) most(wanted float64) float64  { return float64(wanted * (1 + 2*r.within())) }

// addToAll adds measured solvent to all of the batch.
func (r *rescuer) addToAll(factor float64) {
	volume := r.now.MadeML
	if volume*factor > r.largest {
		return
	}
	from, to := volume*(factor/(1+r.within())-1), volume*(r.most(factor)-1)
	r.measured(route.Add, from, volume*(factor-1), to, func(mL float64, steps []route.Step) {
		r.consider(addSolvent, volume+mL, volume*factor/(volume+mL), 0, append([]route.Step{all}, steps...)...)
	})
}

// stays is the part of a solution that can be taken out of it at the most: some rinses, some stays.
const stays = 0.95

// some is how much can be taken out of the batch.
func (r *rescuer) some() float64 { return float64(stays * r.now.MadeML) }

// dilutePart dilutes a part of the batch, which is made up to a mark, or added measured solvent to.
func (r *rescuer) dilutePart(factor float64) {
	for _, d := range r.deliverers() {
		for _, part := range marks(d, 0, r.some()) {
			if part > r.some() {
				continue
			}
			take, makes := route.Measuring(route.Take, d, part), part*factor
			for _, k := range r.vessels() {
				for _, mark := range marks(k, r.least(makes), r.most(makes)) {
					if mark <= part {
						continue
					}
					r.consider(dilutePart, mark, makes/mark, r.aside(part), take, route.Step{Verb: route.MakeUpTo, Amount: mark, Measure: k})
				}
			}
			if makes > r.largest {
				continue
			}
			for _, k := range r.deliverers() {
				for _, solvent := range marks(k, r.least(makes)-part, r.most(makes)-part) {
					r.consider(dilutePart, part+solvent, makes/(part+solvent), r.aside(part), take, route.Measuring(route.Add, k, solvent))
				}
			}
		}
	}
}

// weighPart weighs a part of the batch, and makes it up to a total on the same balance:
//
//	w m/total
//
// Totals go to what is worth no more left over; parts are the roundest that may do.
func (r *rescuer) weighPart() {
	if !r.prep.Solvent.Density.Known || !r.prep.CountsMass() {
		return
	}
	is, wanted := r.concentrations()
	has, target := r.prep.MassFraction(is), r.prep.MassFraction(wanted)
	density := r.prep.Density(target)
	for _, k := range r.prep.Kit.Balances {
		for _, total := range totals(k, r.prep.Volume*density, (r.prep.Volume+float64(4*r.ask.Near()))*density) {
			for _, part := range plan.Roundings(total*target/has, k, r.within()) {
				used := part / r.prep.Density(has)
				if used > r.some() || part >= total {
					continue
				}
				r.consider(weighPart, total/density, has*part/total/target, r.aside(used), route.Step{Verb: route.WeighAliquot, Amount: part, Balance: k}, route.Step{Verb: route.WeighUpTo, Amount: total, Balance: k})
			}
		}
	}
}

// mostTotals are as many readings as are tried for a total.
const mostTotals = 300

// totals are readings of a balance from one mass on to another: all multiples of its digit, or of the least power of ten of
// it that makes no more of them than are tried.
func totals(k *equipment.Balance, from, to float64) (list []float64) {
	step := 1.0
	for (to-from)/k.Readability > mostTotals*step {
		step *= 10
	}
	for n := math.Ceil(from / k.Readability / step * (1 - slack)); ; n++ {
		total := k.Displayed(n * step)
		if total > min(to, k.Capacity)*(1+slack) {
			return list
		}
		list = append(list, total)
	}
}

// twiceWork is how many candidates the search for two dilutions of a part may try, about a second's worth.
const twiceWork = 5_000_000

// fewPieces on a bench are each let pull both ways, as where a bottle is diluted with the one cylinder at hand.
const fewPieces = 3

// searchTwice searches two dilutions of a part, as a plan from a stock does.
func (r *rescuer) searchTwice() {
	p := *r.prep
	p.Routes, p.Packets, p.Ladder = nil, nil, nil
	kit := *p.Kit
	kit.Balances = nil
	u, value := r.now.Analytic.StandardUncertainty, r.now.Analytic.Value
	p.Kit, p.Stocks = &kit, []*route.Stock{{
		Name: "batch", Unit: p.Target.Unit, Strength: route.Estimate{Value: value, Distribution: uncertainty.Normal{Mu: value, Sigma: u}, Known: true},
		Volume: route.Estimate{Value: r.some(), Known: true},
	}}
	o := search.Options{Limits: route.Limits{Steps: 2}, Work: twiceWork, All: len(kit.Measures) <= fewPieces, Coverage: r.coverage}
	if r.err != nil {
		return
	}
	list, notSearched, err := search.Dilutions(r.ctx, &p, o)
	r.err = err
	note.Add(&r.notSearched, notSearched...)
	for _, found := range list {
		if r.err == nil {
			r.try(diluteTwice, &candidate{steps: found.Steps[1:]})
		}
	}
}

// mostFills of one instrument for one volume.
const mostFills = 4

// measured calls look for the ways to measure out a volume within two with steps of a verb: with one reading
// of an instrument, or with full fills of one and a reading of any.
func (r *rescuer) measured(verb route.Verb, from, wanted, to float64, look func(mL float64, steps []route.Step)) {
	for _, k := range r.deliverers() {
		fills := math.Floor(wanted/k.Capacity + slack)
		if fills > mostFills {
			continue
		}
		var full []route.Step
		for range int(fills) {
			full = append(full, route.Measuring(verb, k, k.Capacity))
		}
		filled := float64(fills * k.Capacity)
		if fills > 0 && filled >= from && filled <= to {
			look(filled, full)
		}
		for _, other := range r.deliverers() {
			if fills == 0 && other != k {
				continue // that is a way of the other
			}
			for _, mark := range marks(other, max(0, from-filled), to-filled) {
				look(filled+mark, append(full[:len(full):len(full)], route.Measuring(verb, other, mark)))
			}
		}
	}
}

// deliverers are the instruments that measure a volume out by a reading.
func (r *rescuer) deliverers() (list []*equipment.Measure) {
	for _, k := range r.prep.Kit.Measures {
		if is := k.Kind.Traits(); is.Delivers && !is.Counts {
			list = append(list, k)
		}
	}
	return list
}

// vessels are the instruments that hold what is made up in them.
func (r *rescuer) vessels() (list []*equipment.Measure) {
	for _, k := range r.prep.Kit.Measures {
		if k.Kind.Traits().Receives {
			list = append(list, k)
		}
	}
	return list
}
