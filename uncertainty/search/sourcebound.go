package search

import (
	"math"
	"slices"

	"minim/uncertainty/route"
)

// sourceBound is a lower bound of the relative variance that the weighing of an
// amount of solute brings into a route, over all balances: from influences of its
// own, and from those that sources alone share, such as the assay. What is wrong
// with a weighing grows no faster than the load, so that its relative variance
// falls with the amount: in each cell the bound is that of the upper end.
type sourceBound struct {
	grams cells
	least []float64
	// mixed: a weighing has influences that others than sources pull at.
	mixed bool
}

func (b *Bench) newSourceBound() (*sourceBound, error) {
	s, pulled := &sourceBound{grams: newCells(-40, 20, 3)}, b.pulled()
	s.least = slices.Repeat([]float64{math.Inf(1)}, s.grams.count)
	for k := range b.sources {
		if !b.sources[k].isWeighed() {
			continue
		}
		err := b.sources[k].leastByCell(&s.grams, s.least, func(weigh route.Step) (float64, error) {
			f, _, err := b.prep.SourceFactor(b.coverage, weigh)
			least, mixed := b.unpulled(f, pulled)
			s.mixed = s.mixed || mixed
			return least, err
		})
		if err != nil {
			return nil, err
		}
	}
	return s, nil
}

// leastByCell takes into the least of each cell of solute what the largest weighing in it brings on a balance.
func (s *source) leastByCell(grams *cells, least []float64, brings func(weigh route.Step) (float64, error)) error {
	before, brought := 0.0, 0.0
	for cell := range grams.count {
		digits := s.mostDigits(grams.end(cell))
		if digits < 1 {
			continue // the balance shows none
		}
		if digits != before {
			weigh := s.step
			weigh.Amount = weigh.Balance.Displayed(digits)
			var err error
			if brought, err = brings(weigh); err != nil {
				return err
			}
			before = digits
		}
		least[cell] = min(least[cell], brought)
	}
	return nil
}

// mostDigits of a balance are what the largest weighing for up to so much solute takes.
func (s *source) mostDigits(grams float64) float64 {
	k := s.step.Balance
	return min(math.Ceil(grams/s.intended/k.Readability), math.Floor(k.Capacity/k.Readability*(1+1e-12)))
}

// unpulled is the relative variance of a factor without the influences that others pull at, and whether it has such.
func (b *Bench) unpulled(f route.Factor, pulled map[int]bool) (least float64, mixed bool) {
	least = f.Own
	for _, p := range b.keys.factor(f).shared {
		if mixed = mixed || pulled[p.key]; !pulled[p.key] {
			least += float64(p.relative * p.relative)
		}
	}
	return least, mixed
}

// pulled are the shared influences that others than sources pull at.
func (b *Bench) pulled() map[int]bool {
	keys := make(map[int]bool)
	for _, f := range []factor{b.unit, b.evaporated} {
		for _, p := range f.shared {
			keys[p.key] = true
		}
	}
	for _, list := range [][]making{b.firsts, b.dissolved, b.dilutions} {
		for i := range list {
			for _, p := range list[i].shared {
				keys[p.key] = true
			}
		}
	}
	return keys
}

// at is the bound for an amount in g.
func (s *sourceBound) at(grams float64) float64 { return s.least[s.grams.of(grams)] }
