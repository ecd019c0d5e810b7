package plan

import (
	"errors"

	"minim/equipment"
	"minim/uncertainty/route"
)

// bench is everything that a search puts routes together from.
type bench struct {
	prep     *route.Prep
	coverage float64
	keys     keys
	// unit turns a concentration into the unit of the target.
	unit factor
	// evaporated is by what a solution grows stronger before it is taken from.
	evaporated factor
	// firsts are the ways to make solute up to a mark, dilutions those to dilute
	// a solution.
	firsts    []making
	dilutions []making
	sources   []source
	// sourceBound is the least relative variance of a weighing.
	sourceBound *sourceBound
	// notSearched says what is left out.
	notSearched []string
}

// making is a way to make a solution: of solute, or of an aliquot.
type making struct {
	steps []route.Step
	// aliquot is the volume that it takes, volume what it makes, in mL, as
	// intended.
	aliquot, volume float64
	// ratio is the intended strength of the product over that of what it is
	// made from; for a first solution, that of an amount, 1/volume.
	ratio float64
	factor
	// measured: solvent is measured, not made up to a mark.
	measured bool
	// least is the relative variance that it brings into a route of a pass, at
	// the least: see the package documentation.
	least float64
}

// newBench works out all factors of a kit. Fine takes every graduation.
func newBench(p *route.Prep, o Options) (*bench, error) {
	b := &bench{prep: p, coverage: o.coverage(), keys: make(keys)}
	unit, ok, err := p.UnitFactor()
	if err != nil {
		return nil, err
	}
	b.unit = b.keys.factor(unit)
	if ok {
		err = b.addMakings(o.Fine)
	} else {
		b.notSearched = append(b.notSearched, "routes by volume, since the target is a strength by mass")
	}
	if err != nil {
		return nil, err
	}
	if err := b.addSources(); err != nil {
		return nil, err
	}
	b.sourceBound, err = b.newSourceBound()
	return b, err
}

// from is the bench with a balance as its only source. Its makings stay as they are.
func (b *bench) from(k *equipment.Balance) (*bench, error) {
	with, prep := *b, *b.prep
	prep.Kit, prep.Stocks, prep.Packets = withBalances(prep.Kit, k), nil, nil
	with.prep, with.sources, with.notSearched = &prep, nil, nil
	if err := with.addSources(); err != nil {
		return nil, err
	}
	var err error
	with.sourceBound, err = with.newSourceBound()
	return &with, err
}

// addMakings lists the ways to make a solution by volume.
func (b *bench) addMakings(fine bool) error {
	p := b.prep
	taken, err := b.factors(route.Take, fine, p.TakenFactor)
	if err != nil {
		return err
	}
	contained, err := b.factors(route.MakeUpTo, fine, p.ContainedFactor)
	if err != nil {
		return err
	}
	evaporated, err := p.EvaporatedFactor(route.Step{})
	if err != nil {
		return err
	}
	b.evaporated = b.keys.factor(evaporated)
	b.addFirsts(contained)
	b.addDilutions(taken, contained)
	return nil
}

// measurement is a measured volume and its factor.
type measurement struct {
	step route.Step
	factor
}

// factors lists what can be measured by steps of a verb.
func (b *bench) factors(verb route.Verb, fine bool, of func(route.Step) (route.Factor, error)) ([]measurement, error) {
	var list []measurement
	for _, k := range b.prep.Kit.Measures {
		if !suits(k, verb) {
			continue
		}
		for _, mark := range k.Marks(fine) {
			s := route.Step{Verb: verb, Amount: mark, Measure: k}
			f, err := of(s)
			var no *equipment.Impossible
			if errors.As(err, &no) {
				continue
			}
			if err != nil {
				return nil, err
			}
			if verb == route.MakeUpTo && f.Low <= 0 {
				continue // so badly known that it could be nothing
			}
			list = append(list, measurement{s, b.keys.factor(f)})
		}
	}
	return list, nil
}

func suits(k *equipment.Measure, verb route.Verb) bool {
	if verb == route.MakeUpTo {
		return k.Kind.Receives()
	}
	return k.Kind.Delivers()
}

func (b *bench) addFirsts(contained []measurement) {
	for _, v := range contained {
		b.firsts = append(b.firsts, making{
			steps: []route.Step{v.step}, volume: v.step.Amount, ratio: 1 / v.step.Amount, factor: v.factor.power(-1),
		})
	}
}

func (b *bench) addDilutions(taken, contained []measurement) {
	for _, a := range taken {
		for _, v := range contained {
			if v.step.Amount <= a.step.Amount {
				continue
			}
			b.dilutions = append(b.dilutions, making{
				steps: []route.Step{a.step, v.step}, aliquot: a.step.Amount, volume: v.step.Amount,
				ratio: a.step.Amount / v.step.Amount, factor: a.factor.times(v.factor.power(-1)),
			})
		}
		for _, w := range taken {
			if a.low+w.low <= 0 {
				continue // so badly known that it could be nothing
			}
			add := w.step
			add.Verb = route.Add
			volume := a.step.Amount + w.step.Amount
			b.dilutions = append(b.dilutions, making{
				steps: []route.Step{a.step, add}, aliquot: a.step.Amount, volume: volume,
				ratio: a.step.Amount / volume, factor: ofAdding(a.factor, w.factor), measured: true,
			})
		}
	}
}
