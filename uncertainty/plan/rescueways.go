package plan

import (
	"context"
	"errors"
	"math"
	"slices"
	"time"

	"minim/equipment"
	"minim/uncertainty"
	"minim/uncertainty/route"
)

var all = route.Step{Verb: route.TakeAll}

// weaken tries the ways to dilute a batch that is too strong by a factor.
func (r *rescuer) weaken(factor float64) error {
	volume := r.now.MadeML
	if err := r.fillUp(volume * factor); err != nil {
		return err
	}
	if volume*factor <= r.largest {
		for _, steps := range r.measured(route.Add, volume*(factor-1)) {
			if err := r.try(AddSolvent, append([]route.Step{all}, steps...)...); err != nil {
				return err
			}
		}
	}
	return r.diluteParts()
}

// fillUp makes all of the batch up to the marks nearest to a volume.
func (r *rescuer) fillUp(volume float64) error {
	for _, k := range r.prep.Kit.Measures {
		if !k.Kind.Receives() {
			continue
		}
		for _, mark := range neighbours(k.Marks(true), volume) {
			if err := r.try(FillUp, all, route.Step{Verb: route.MakeUpTo, Amount: mark, Measure: k}); err != nil {
				return err
			}
		}
	}
	return nil
}

// partTime is how long each search for the dilutions of a part may take.
const partTime = 5 * time.Second

// partSearches are those for the dilutions of a part, each only when what was found
// before is not good enough: one dilution by the numbered marks, which are easier to
// read, one by every graduation, and two.
var partSearches = []Options{
	{Limits: route.Limits{Steps: 1}, Time: partTime},
	{Limits: route.Limits{Steps: 1}, Time: partTime, Fine: true},
	{Limits: route.Limits{Steps: 2}, Time: partTime},
}

// diluteParts searches the dilutions of a part.
func (r *rescuer) diluteParts() error {
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
		o.Settings.Coverage = r.coverage
		list, err := routesOf(r.ctx, &p, o)
		if err != nil {
			return err
		}
		for _, f := range list {
			if err := r.try(DilutePart, f.Route.Steps[1:]...); err != nil {
				return err
			}
		}
		if slices.ContainsFunc(r.ways, func(w way) bool { return w.kind == DilutePart && r.good(&w.result) && r.onTarget(&w.result) }) {
			break
		}
	}
	return nil
}

// routesOf are the routes of a front with so many dilutions, not simulated.
func routesOf(ctx context.Context, p *route.Prep, o Options) ([]found, error) {
	b, err := newBench(p, o)
	if err != nil || len(b.dilutions) == 0 {
		return nil, err
	}
	s := newSearch(b, o, newJudge(p, b.coverage, tooLittle, enough))
	s.fewest, s.byVolume = o.Steps, true
	return s.result(ctx)
}

// strengthen tries the ways to strengthen a batch: with stocks, with stronger solutions
// that are left from making it, and with solute.
func (r *rescuer) strengthen(is, wanted float64) error {
	volume := r.now.MadeML
	for _, k := range r.prep.Stocks {
		strong, err := r.prep.StockConcentration(k)
		var no *equipment.Impossible
		if errors.As(err, &no) {
			continue
		}
		if err != nil {
			return err
		}
		if err := r.strengthenWith(route.Step{Stock: k}, strong, volumeOf(k), is, wanted); err != nil {
			return err
		}
	}
	solutions, err := r.prep.Solutions(r.batch)
	if err != nil {
		return err
	}
	for _, s := range solutions[:max(0, len(solutions)-1)] {
		if err := r.strengthenWith(route.Step{From: s.Step}, s.Concentration, s.LeftML, is, wanted); err != nil {
			return err
		}
	}
	content := r.prep.SoluteContent() - wanted*r.prep.SpecificVolume()
	if content <= 0 || !r.prep.CountsMass() {
		return nil
	}
	return r.addSolute(volume * (wanted - is) / content)
}

// strengthenWith adds of a stronger solution, of which so much is left, what brings the
// batch to the target: a = V (c - c_batch)/(c_strong - c).
func (r *rescuer) strengthenWith(source route.Step, strong, left, is, wanted float64) error {
	if strong <= wanted*(1+slack) || source.Stock != nil && r.isBatch(source.Stock) {
		return nil
	}
	for _, steps := range r.measured(route.Strengthen, r.now.MadeML*(wanted-is)/(strong-wanted)) {
		total := 0.0
		for i := range steps {
			steps[i].Stock, steps[i].From = source.Stock, source.From
			total += steps[i].Amount
		}
		if total > left*(1+slack) {
			continue
		}
		if err := r.try(StrengthenAll, append([]route.Step{all}, steps...)...); err != nil {
			return err
		}
	}
	return nil
}

// isBatch reports whether a stock is the batch itself.
func (r *rescuer) isBatch(k *route.Stock) bool {
	return len(r.batch.Steps) == 1 && r.batch.Steps[0].Stock == k
}

// addSolute dissolves the readings nearest to a mass of solute.
func (r *rescuer) addSolute(grams float64) error {
	for _, k := range r.prep.Kit.Balances {
		digits := math.Floor(grams / k.Readability)
		for n := max(1, digits); n <= digits+1 && n*k.Readability <= k.Capacity; n++ {
			if err := r.try(AddMore, all, route.Step{Verb: route.AddSolute, Amount: reading(k, n), Balance: k}); err != nil {
				return err
			}
		}
	}
	return nil
}
