package search

import (
	"math"
	"sync/atomic"
)

// gaps tell how much more the ways of two groups bring together than each at the least, where
// they belong to one route: one piece makes both, so that its errors add up, or it would be taken
// with in one and filled in the other. With e what a way brings above the least of its group,
// c what two ways bring together that neither brings alone, and m groups in a route, it brings at the least
//
//	Σ_i e_i + Σ_i<j c_ij = Σ_i<j ((e_i + e_j)/(m - 1) + c_ij)
//
// of which the gap of two groups is the smallest part over their ways. None is below zero, so that
// the gaps of those groups that are chosen are a lower bound. What a first solution brings counts k² times
// where solute is dissolved in measured solvent, and what it brings together with another k times (dissolved.go): of
// their gap at least k². Each is worked out when it is asked for.
type gaps struct {
	*pass
	part float64 // 1/(m - 1)
	rows []atomic.Pointer[[]uint32]
}

// newGaps are those of a pass; nil where a route has one group only.
func newGaps(p *pass) *gaps {
	groups := p.dilutions
	if p.hasFirst() {
		groups++
	}
	if groups < 2 {
		return nil
	}
	return &gaps{p, 1 / float64(groups-1), make([]atomic.Pointer[[]uint32], len(p.dilutionGroups))}
}

// between is the gap of a group of dilutions and another group.
func (g *gaps) between(a, b *group) float64 {
	row := g.rows[a.number].Load()
	if row == nil {
		fresh := make([]uint32, g.groupCount)
		g.rows[a.number].CompareAndSwap(nil, &fresh)
		row = g.rows[a.number].Load()
	}
	known := &(*row)[b.number]
	if bits := atomic.LoadUint32(known); bits != 0 {
		return float64(math.Float32frombits(bits - 1))
	}
	gap := float32(g.least(a, b) * (1 - 1e-6)) // no more, whatever the rounding
	atomic.StoreUint32(known, math.Float32bits(gap)+1)
	return float64(gap)
}

// least goes through the ways of two groups, which rise in what they bring.
func (g *gaps) least(a, b *group) float64 {
	least := math.Inf(1)
	for i := range a.ways {
		v := &a.ways[i]
		above := float64((v.least - a.least) * g.part)
		if above >= least {
			break
		}
		for j := range b.ways {
			w := &b.ways[j]
			sum := above + float64((w.least-b.least)*g.part)
			if sum >= least {
				break
			}
			if !g.contradict(v.making, w.making) {
				least = min(least, sum+together(v, w))
			}
		}
	}
	return least
}

// contradict reports whether with two ways in one route a piece pulls both ways that may not.
func (p *pass) contradict(a, b *making) bool {
	against := func(taken, made *measurement) bool {
		return taken != nil && taken.place == made.place && made.step.Measure != p.free && made.step.Measure.Count <= 1
	}
	return against(a.taken, b.made) || against(b.taken, a.made)
}

// together is what two ways bring together by the influences that they share.
func together(a, b *groupWay) (variance float64) {
	for _, p := range a.sure {
		for _, q := range b.sure {
			if p.key == q.key {
				variance += float64(2 * p.relative * q.relative)
			}
		}
	}
	return max(0, variance)
}
