package rescue

import (
	"math"
	"slices"

	"minim/equipment"
	"minim/report/words/note"
	"minim/uncertainty"
	"minim/uncertainty/route"
	"minim/uncertainty/search"
)

var all = route.Step{Verb: route.TakeAll}

// weaken tries the ways to dilute a batch that is too strong by a factor.
func (r *rescuer) weaken(factor float64) {
	volume := r.now.MadeML
	r.fillUp(volume * factor)
	if volume*factor <= r.largest {
		for _, steps := range r.measured(route.Add, volume*(factor-1)) {
			r.try(addSolvent, append([]route.Step{all}, steps...)...)
		}
	}
	if r.diluteParts(); !r.has(dilutePart) {
		r.diluteFinely(factor)
	}
}

// has reports whether a way of a kind is good enough and aims at the target, so that no
// more need be tried: as far as can be told without simulating it.
func (r *rescuer) has(kinds ...way) bool {
	has := !r.thorough && slices.ContainsFunc(r.found, func(c correction) bool {
		return slices.Contains(kinds, c.kind) && r.good(&c.result) && r.onTarget(&c.result)
	})
	r.stopped = r.stopped || has
	return has
}

// fillUp makes all of the batch up to the marks nearest to a volume.
func (r *rescuer) fillUp(volume float64) {
	for _, k := range r.vessels() {
		for _, mark := range k.Nearest(volume) {
			r.try(fillUp, all, route.Step{Verb: route.MakeUpTo, Amount: mark, Measure: k})
		}
	}
}

// partWork is how many candidates each search for the dilutions of a part may try, about
// a second's worth.
const partWork = 5_000_000

// partSearches are those for the dilutions of a part, each only when what was found
// before is not good enough: one dilution by the numbered marks, which are easier to
// read, one by every graduation, and two.
var partSearches = []search.Options{
	{Limits: route.Limits{Steps: 1}, Work: partWork},
	{Limits: route.Limits{Steps: 1}, Work: partWork, Fine: true},
	{Limits: route.Limits{Steps: 2}, Work: partWork},
}

// diluteParts searches the dilutions of a part.
func (r *rescuer) diluteParts() {
	p := *r.prep
	p.Routes, p.Packets, p.Ladder = nil, nil, nil
	kit := *p.Kit
	kit.Balances = nil
	u, value := r.now.Analytic.StandardUncertainty, r.now.Analytic.Value
	p.Kit, p.Stocks = &kit, []*route.Stock{{
		Name: "batch", Unit: p.Target.Unit, Strength: route.Estimate{Value: value, Distribution: uncertainty.Normal{Mu: value, Sigma: u}, Known: true},
		Volume: route.Estimate{Value: 0.95 * r.now.MadeML, Known: true}, // some rinses, some stays
	}}
	for _, o := range partSearches {
		if r.err != nil || r.has(dilutePart) {
			return
		}
		o.Coverage = r.coverage
		list, notSearched, err := search.Dilutions(r.ctx, &p, o)
		r.err = err
		for _, n := range notSearched {
			if !note.Contains(r.notSearched, n) {
				r.notSearched = append(r.notSearched, n)
			}
		}
		for _, found := range list {
			r.try(dilutePart, found.Steps[1:]...)
		}
	}
}

// strong is a solution that can be added to a batch that is too weak: what a step then
// says of it, its concentration in g/mL, and how much there is of it, in mL.
type strong struct {
	source        route.Step
	concentration float64
	left          float64
}

// strengthen tries the ways to strengthen a batch: with stocks, with stronger solutions
// that are left from making it, with solute, and where none of these is good enough, with
// more than is needed of a stronger solution, and solvent.
func (r *rescuer) strengthen(is, wanted float64) {
	r.stronger, r.err = r.strongerThan(wanted)
	for _, s := range r.stronger {
		r.strengthenWith(s, is, wanted)
	}
	if content := r.prep.SoluteContent() - float64(wanted*r.prep.SpecificVolume()); content > 0 && r.prep.CountsMass() {
		r.addSolute(r.now.MadeML * (wanted - is) / content)
	}
	if r.has(strengthenAll, addMore) {
		return
	}
	for _, s := range r.stronger {
		r.strengthenBeyond(s, is, wanted)
	}
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

// strengthenWith adds of a stronger solution what brings the batch to the target:
//
//	a = V (c - c_batch)/(c_strong - c)
func (r *rescuer) strengthenWith(s strong, is, wanted float64) {
	for _, steps := range r.measured(route.Strengthen, r.now.MadeML*(wanted-is)/(s.concentration-wanted)) {
		total := 0.0
		for i := range steps {
			steps[i].Stock, steps[i].From = s.source.Stock, s.source.From
			total += steps[i].Amount
		}
		if total <= s.left*(1+slack) {
			r.try(strengthenAll, append([]route.Step{all}, steps...)...)
		}
	}
}

// addSolute dissolves the readings nearest to a mass of solute.
func (r *rescuer) addSolute(grams float64) {
	for _, k := range r.prep.Kit.Balances {
		digits := math.Floor(grams / k.Readability)
		for n := max(1, digits); n <= digits+1 && n*k.Readability <= k.Capacity; n++ {
			r.try(addMore, all, route.Step{Verb: route.AddSolute, Amount: k.Displayed(n), Balance: k})
		}
	}
}

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

// vessels are the instruments that hold what is made up in them.
func (r *rescuer) vessels() []*equipment.Measure {
	return slices.DeleteFunc(slices.Clone(r.prep.Kit.Measures), func(k *equipment.Measure) bool { return !k.Kind.Traits().Receives })
}
