package search

import (
	"math"
	"slices"
	"sync"

	"minim/equipment"
	"minim/report/words/note"
	"minim/uncertainty/route"
)

// source is what a route starts with.
type source struct {
	step route.Step
	// intended is the amount of solute in g, or the concentration of a stock in
	// g/mL; of a balance, in 1 g that is weighed.
	intended float64
	// volume that there is of a stock, in mL; infinite where it is not stated.
	volume float64
	// factor of a packet, a stock, or a liquid that is measured.
	factor
	// by is that measurement, or that of a part of a stock in another solvent, and filled the mL
	// that it takes.
	by     *measurement
	filled float64
	// swelling is 1 + β of a solid: see dissolved.go.
	swelling *factor
	// bulk is the variance of β but for that of the purity.
	bulk float64
}

func (s *source) isStock() bool { return s.verb() == route.Start }

// verb tells sources apart: what is measured out of a stock in another solvent is as a liquid
// solute that is measured.
func (s *source) verb() route.Verb {
	if s.by != nil {
		return route.Measured
	}
	return s.step.Verb
}

func (s *source) isWeighed() bool { return s.step.Verb == route.Weigh }

// addSources finds what routes can start with: balances, packets, and stocks in
// the solvent of the prep.
func (b *Bench) addSources() error {
	if err := b.addMasses(); err != nil {
		return err
	}
	for _, k := range b.prep.Stocks {
		if k.Solvent != "" && k.Solvent != b.prep.Solvent.Name {
			b.NotSearched = append(b.NotSearched, note.Of("from-another-solvent", k.Name))
			continue
		}
		if err := b.addSource(route.Step{Verb: route.Start, Stock: k}); err != nil {
			return err
		}
	}
	return nil
}

// addMasses adds what brings in a mass of solute, where the prep says what to make of it.
func (b *Bench) addMasses() error {
	balances, packets := b.prep.Kit.Balances, slices.DeleteFunc(slices.Clone(b.prep.Packets), func(k *route.Packet) bool {
		return b.prep.Lacks(&route.Step{Verb: route.UsePacket, Packet: k}) != nil
	})
	if !b.prep.CountsMass() {
		if len(balances)+len(b.prep.Packets)-len(packets) > 0 {
			b.NotSearched = append(b.NotSearched, note.Of("by-weighing-lacks", "", b.prep.NeedsMass("a mass").Error()))
		}
		balances = nil
	}
	if why := NotTaken(b.prep); !why.None() && len(balances)+len(packets) > 0 {
		b.NotSearched, balances = append(b.NotSearched, note.Of("from-pure", "", why)), nil
		if why.Code == "is-gas" {
			packets = nil
		}
	}
	for _, k := range balances {
		if err := b.addSource(route.Step{Verb: route.Weigh, Balance: k, Amount: k.Displayed(1)}); err != nil {
			return err
		}
	}
	for _, k := range packets {
		if err := b.addSource(route.Step{Verb: route.UsePacket, Packet: k}); err != nil {
			return err
		}
	}
	return nil
}

// NotTaken is why the solute is not taken out pure, for what proposes nothing of the kind.
func NotTaken(p *route.Prep) note.Note {
	if why := p.NotPure(); why.Code != "only-dissolved" {
		return why
	}
	return note.Of("solution-alone", p.Solute.Weighed())
}

// byDrops are the drops of a liquid solute that are tried.
var byDrops = []float64{1, 2, 3, 4, 5, 6, 8, 10, 15, 20}

// addMeasured adds what is measured out, at the marks of all that delivers, and in drops: a
// liquid solute, where the strength counts its volume or a route of the prep measures it, and
// parts of stocks in another solvent.
func (b *Bench) addMeasured(at tried) error {
	measures := func(s route.Step) bool { return s.Verb == route.Measured }
	if liquid := b.prep.SoluteUnit() == "mL" || slices.ContainsFunc(b.prep.Routes, func(r *route.Route) bool { return slices.ContainsFunc(r.Steps, measures) }); liquid && b.prep.NotPure().None() {
		if err := b.measureOut(at, route.Step{Verb: route.Measured}); err != nil {
			return err
		}
	}
	for _, k := range b.prep.Stocks {
		if k.Solvent == "" || k.Solvent == b.prep.Solvent.Name {
			continue
		}
		if err := b.measureOut(at, route.Step{Verb: route.Start, Stock: k}); err != nil {
			return err
		}
	}
	return nil
}

// measureOut adds what can be measured out of a source, with its factor.
func (b *Bench) measureOut(at tried, from route.Step) error {
	if b.clashes(from) {
		return nil
	}
	for place, k := range b.prep.Kit.Measures {
		marks, verb, least := at[k], route.Measured, 1.0
		if k.Kind.Traits().Counts {
			marks, least = byDrops, 0 // which fill no vessel
		}
		if from.Verb == route.Start {
			verb = route.Take
		}
		for _, mark := range marks {
			s := route.Measuring(verb, k, mark)
			if !suits(k, route.Take) || from.Verb == route.Start && float64(mark*least) > from.Stock.MostML() {
				continue
			}
			steps := []route.Step{s}
			if from.Verb == route.Start {
				steps = []route.Step{from, s}
			}
			f, intended, err := b.prep.SourceFactor(b.coverage, steps...)
			if _, no := equipment.WhyNot(err); no || err == nil && (!f.Uninformative.None() || f.Low <= 0) {
				continue
			}
			if err != nil {
				return err
			}
			first, g := from, b.keys.factor(f)
			if from.Verb == route.Measured {
				first = s
			}
			b.sources = append(b.sources, source{step: first, intended: intended, volume: math.Inf(1), factor: g, by: &measurement{s, g, place}, filled: float64(mark * least)})
		}
	}
	return nil
}

// addSource leaves out what may not meet the solvent.
func (b *Bench) addSource(s route.Step) error {
	if b.clashes(s) {
		return nil
	}
	f, intended, err := b.prep.SourceFactor(b.coverage, s)
	if err != nil {
		return err
	}
	if s.Verb == route.Weigh {
		intended /= s.Amount
	}
	one := source{step: s, intended: intended, volume: s.Stock.MostML(), factor: b.keys.factor(f)}
	err = b.swell(&one)
	b.sources = append(b.sources, one)
	return err
}

// clashes reports whether what a step brings may not meet the solvent, and says so.
func (b *Bench) clashes(s route.Step) bool {
	clashes := b.prep.Clashes(&route.Route{Steps: []route.Step{s}})
	if len(clashes) == 0 {
		return false
	}
	note.Add(&b.NotSearched, note.Of("that-may-not-meet", clashes[0].First, clashes[0].Second))
	return true
}

// nearestDigits is the number of digits of a balance nearest to a mass; of two as
// near, the greater, whatever the last digits of floating point are.
func nearestDigits(grams float64, k *equipment.Balance) float64 {
	return math.Floor(grams/k.Readability + 0.5 + slack)
}

// digitsFor are those of the reading nearest to so much of what counts, and whether the balance shows it.
func (s *source) digitsFor(grams float64) (digits float64, shown bool) {
	k := s.step.Balance
	digits = nearestDigits(grams/s.intended, k)
	return digits, digits >= 1 && digits*k.Readability <= k.Capacity*(1+1e-12)
}

// weighing is a reading of a balance with the solute that it holds.
type weighing struct {
	factor
	reading  float64
	possible bool // and informative
}

// weighings are those on one balance, each worked out once, for all walks.
type weighings struct {
	*sync.Mutex
	bench  *Bench
	source *source
	known  map[float64]*weighing
}

// nearest is the weighing that is intended to hold nearest to so much solute.
func (w *weighings) nearest(grams float64) (*weighing, error) {
	digits, shown := w.source.digitsFor(grams)
	if !shown {
		return &weighing{}, nil
	}
	w.Lock()
	defer w.Unlock()
	if found, known := w.known[digits]; known {
		return found, nil
	}
	s := w.source.step
	s.Amount = s.Balance.Displayed(digits)
	if w.bench.prep.Carries(s) != nil {
		w.known[digits] = &weighing{}
		return w.known[digits], nil
	}
	f, _, err := w.bench.prep.SourceFactor(w.bench.coverage, s)
	if err != nil {
		return nil, err
	}
	w.known[digits] = &weighing{w.bench.keys.factor(f), s.Amount, f.Uninformative.None()}
	return w.known[digits], nil
}

// mostWeighed is the most solute that the balances can weigh, in g of what counts,
// where so much may be used; with a digit for the rounding of a reading.
func (b *Bench) mostWeighed(allowed float64) float64 {
	most := 0.0
	for i := range b.sources {
		if s := &b.sources[i]; s.isWeighed() {
			k := s.step.Balance
			most = max(most, (min(k.Capacity, allowed)+k.Readability)*s.intended)
		}
	}
	return most
}

// Holds reports whether something on the bench holds so much of the solution.
func (b *Bench) Holds(mL float64) bool {
	enough := func(m making) bool { return m.volume >= mL*(1-1e-9) }
	if slices.ContainsFunc(b.firsts, enough) || slices.ContainsFunc(b.dissolved, enough) || slices.ContainsFunc(b.dilutions, enough) {
		return true
	}
	density := b.prep.Solvent.Density
	return density.Known && b.prep.CountsMass() && slices.ContainsFunc(b.prep.Kit.Balances, func(k *equipment.Balance) bool { return k.Capacity >= mL*density.Value/2 })
}
