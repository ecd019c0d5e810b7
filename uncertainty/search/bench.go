package search

import (
	"math"
	"slices"
	"sync"

	"minim/equipment"
	"minim/report/words/note"
	"minim/uncertainty/route"
)

// Bench is everything that a search puts routes together from. Its methods search it, from one
// goroutine at a time, and add to what was left out.
type Bench struct {
	prep     *route.Prep
	options  Options
	places   places
	coverage float64
	keys     *keys
	// unit turns a concentration into the unit of the target.
	unit factor
	// evaporated is by what a solution grows stronger before it is taken from.
	evaporated factor
	// firsts are the ways to make solute up to a mark, dilutions those to dilute
	// a solution.
	firsts    []making
	dilutions []making
	// dissolved are the volumes of solvent that solute is dissolved in.
	dissolved []making
	sources   []source
	// up is what is weighed up, nil where nothing can be.
	up *weighingUp
	// one numbers influences at a time.
	one *sync.Mutex
	// sourceBound is the least relative variance of a weighing.
	sourceBound *sourceBound
	// NotSearched says what was left out so far; CutShort: some of it since enough was tried, of which each route
	// by volume leaves over so much or more, in mL, that none of those found beats.
	NotSearched []note.Note
	CutShort    bool
	Untried     float64
}

// NewBench works out all factors of a kit. What a kit cannot do is left out; an error is one of
// the model, as where a target cannot be reckoned with.
func NewBench(p *route.Prep, o Options) (*Bench, error) {
	if o.Tried == nil {
		o.Tried = new(int64)
	}
	b := &Bench{prep: p, options: o, places: placesIn(p), coverage: o.coverage(), keys: newKeys(), one: new(sync.Mutex)}
	unit, ok, err := p.UnitFactor()
	if err != nil {
		return nil, err
	}
	b.unit = b.keys.factor(unit)
	if !ok {
		b.NotSearched = append(b.NotSearched, note.Of("by-volume-for-mass", ""))
	}
	if err = b.addSources(); err == nil && ok {
		err = b.addMakings()
	}
	if err != nil {
		return nil, err
	}
	return b, b.bound()
}

// bound works out what bounds sources, and what is weighed up of them.
func (b *Bench) bound() (err error) {
	if b.sourceBound, err = b.newSourceBound(); err == nil {
		b.up, err = b.newWeighingUp()
	}
	return err
}

// From is the bench with a balance as its only source, on which nothing was left out yet. Its
// makings by volume stay as they are.
func (b *Bench) From(k *equipment.Balance) (*Bench, error) {
	with, prep := *b, *b.prep
	prep.Kit, prep.Stocks, prep.Packets = WithBalances(prep.Kit, k), nil, nil
	with.prep, with.sources, with.NotSearched, with.CutShort, with.Untried = &prep, nil, nil, false, 0
	if err := with.addSources(); err != nil {
		return nil, err
	}
	return &with, with.bound()
}

// cut says that something was left out since enough was tried, of which all leaves over so much or more.
func (b *Bench) cut(leaves float64) {
	if b.CutShort {
		leaves = min(leaves, b.Untried)
	}
	b.CutShort, b.Untried = true, leaves
}

// addMakings lists the ways to make a solution by volume, of as many marks as a search
// can pair.
func (b *Bench) addMakings() error {
	evaporated, err := b.prep.EvaporatedFactor(route.Step{})
	if err != nil {
		return err
	}
	b.evaporated = b.keys.factor(evaporated)
	all := newTried(b.prep.Kit, b.options.Fine)
	some := all.thinned(mostPairs)
	if err := b.addMeasured(some); err != nil {
		return err
	}
	if len(some.leftOut(b.prep.Kit, all)) > 0 && b.oneFromStocks() {
		more := all.thinned(mostSifted)
		done, err := b.pair(more, b.nearTarget())
		if done || err != nil {
			b.NotSearched = append(b.NotSearched, more.leftOut(b.prep.Kit, all)...)
			return err
		}
	}
	b.NotSearched = append(b.NotSearched, some.leftOut(b.prep.Kit, all)...)
	if _, err = b.pair(some, everything); err != nil {
		return err
	}
	return b.addDissolving(some)
}

// everything is a span that holds every ratio.
var everything = span{0, math.Inf(1)}

// oneFromStocks reports whether the only routes by volume are one dilution of a stock, of
// which the ratio follows from the target.
func (b *Bench) oneFromStocks() bool {
	return b.options.Steps == 1 && len(b.sources) > 0 && !slices.ContainsFunc(b.sources, func(s source) bool { return !s.isStock() })
}

// nearTarget is what one dilution of a stock must multiply its strength by, to come as near to
// the target as a route must that is looked for by its chance of being inside or its tightness.
func (b *Bench) nearTarget() span {
	chance, tight := newJudge(b.prep, b.coverage, lower[0], enough).strengths, tightness(b.prep, b.coverage).strengths
	begins := around(b.sources, func(s *source) span { return span{s.mean * b.unit.mean, s.mean * b.unit.mean} })
	return span{min(chance.low, tight.low) / begins.high, max(chance.high, tight.high) / begins.low}
}
