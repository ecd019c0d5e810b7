package search

import (
	"cmp"
	"context"
	"math"
	"slices"

	"minim/equipment"
	"minim/uncertainty/route"
)

// pass is the part of a search that looks at the routes with so many dilutions that start
// with a step of one verb, and in which no piece pulls both ways but one that is free, if
// any, which must: one is taken with only, or filled and solvent added with it only.
type pass struct {
	dilutions int
	from      route.Verb
	free      *equipment.Measure
	// weights of the shared influences, as far as they count before a route is finished.
	weights []float64
	// sources are those of the pass; fixed ones rise in what they bring.
	sources []*source
	// firsts and dilutionGroups are what the bench can make, by volumes. Both rise
	// in the volume that they make, and of one volume in what they bring at the
	// least.
	firsts, dilutionGroups []group
	// allDissolved are the volumes of solvent that solute is dissolved in, dissolved those of what is
	// diluted further.
	allDissolved, dissolved []group
	// groupCount is that of all lists, by which groups are numbered.
	groupCount int
	// digit is the coarsest of the balances, in g of what counts.
	digit     float64
	remainder *remainder
	gaps      *gaps
	// reach is nil where the mass of solute is chosen last.
	reach *reach
}

// group is the ways to make a solution of one volume from one aliquot. They leave
// over the same and have the same ratio, and differ in their instruments.
type group struct {
	aliquot, volume, ratio float64
	// ways rise in what they bring at the least, as the first does.
	ways  []groupWay
	least float64
	// expected is what the ways multiply the expected strength by.
	expected span
	// number of the group among all, and next in its list the place of the next that makes more.
	number, next int
	// with are the least of those ways that use the piece which is free to pull both ways.
	with leasts
}

// groupWay is a way with the relative variance that it brings into a route of the pass,
// at the least: see the package documentation.
type groupWay struct {
	*making
	least float64
	cover cover
	sure  []part // of influences that count in full before a route is finished
}

// newPass prepares the passes from a source, which can take seconds; its error is that of
// the context. How many dilutions it is about is set by for.
func newPass(b *Bench, from route.Verb, free *equipment.Measure) *pass {
	p := &pass{from: from, free: free, weights: b.weights(free)}
	if p.weighsLast() {
		for i := range b.up.samples { // which may pull either way
			for _, s := range b.up.samples[i].shared {
				p.weights[s.key] = 0
			}
		}
	}
	for i := range b.sources {
		if s := &b.sources[i]; s.verb() == from {
			p.sources = append(p.sources, s)
			if s.isWeighed() {
				p.digit = max(p.digit, s.step.Balance.Readability*s.intended)
			}
		}
	}
	if from != route.Weigh {
		slices.SortStableFunc(p.sources, func(a, b *source) int { return cmp.Compare(a.mean, b.mean) })
	}
	if p.hasFirst() {
		p.firsts = p.groups(b.firsts)
	}
	if from == route.Weigh || from == route.UsePacket {
		p.allDissolved = p.groups(b.dissolved)
		p.dissolved = p.groups(slices.DeleteFunc(slices.Clone(b.dissolved), func(m making) bool { return !isRound(m.made.step.Measure, m.volume) }))
	}
	p.dilutionGroups = p.groups(slices.DeleteFunc(slices.Clone(b.dilutions), func(m making) bool { return m.pullsBothWays() && m.made.step.Measure != free }))
	p.groupCount = len(p.dilutionGroups)
	for _, list := range [][]group{p.firsts, p.allDissolved, p.dissolved} {
		for i := range list {
			list[i].number += p.groupCount
		}
		p.groupCount += len(list)
	}
	p.reach = newReach(b, p)
	return p
}

// about makes it a pass with so many dilutions, no fewer than before.
func (p *pass) about(ctx context.Context, b *Bench, dilutions int) error {
	p.dilutions = dilutions
	if p.weighsLast() {
		if err := b.up.bound(dilutions); dilutions == 0 || err != nil {
			return err
		}
	}
	p.gaps = newGaps(p)
	p.remainder = p.remainder.grown(ctx, b, p)
	return ctx.Err()
}

// groups puts ways to make a solution together by their volumes.
func (p *pass) groups(list []making) []group {
	type volumes struct{ aliquot, volume float64 }
	of := make(map[volumes]int)
	var groups []group
	for i := range list {
		m := &list[i]
		key := volumes{m.aliquot, m.volume}
		at, known := of[key]
		if !known {
			at = len(groups)
			of[key] = at
			groups = append(groups, group{aliquot: m.aliquot, volume: m.volume, ratio: m.ratio, with: ofNone(math.Inf(1))})
		}
		way := groupWay{m, p.leastOf(m), p.coverOf(m), p.sureOf(m)}
		groups[at].ways = append(groups[at].ways, way)
		groups[at].with.take(way.least, way.cover)
	}
	for i := range groups {
		slices.SortStableFunc(groups[i].ways, func(a, b groupWay) int { return cmp.Compare(a.least, b.least) })
		groups[i].least, groups[i].expected = groups[i].ways[0].least, groups[i].means()
	}
	slices.SortStableFunc(groups, func(a, b group) int {
		return cmp.Or(cmp.Compare(a.volume, b.volume), cmp.Compare(a.least, b.least))
	})
	for i := len(groups) - 1; i >= 0; i-- {
		groups[i].number, groups[i].next = i, i+1
		if i+1 < len(groups) && groups[i+1].volume == groups[i].volume {
			groups[i].next = groups[i+1].next
		}
	}
	return groups
}

// leastOf is the relative variance that a way to make a solution brings into a
// route at the least: its own, and the squares of what it adds to sums that only
// grow.
func (p *pass) leastOf(m *making) float64 {
	least := m.own
	for _, s := range m.shared {
		if p.weights[s.key] > 0 {
			least += float64(s.relative * s.relative)
		}
	}
	return least
}

// sureOf are the parts of a way that count in full before a route is finished.
func (p *pass) sureOf(m *making) (sure []part) {
	for _, s := range m.shared {
		if p.weights[s.key] == 1 {
			sure = append(sure, s)
		}
	}
	return sure
}

// hasFirst reports whether a first solution is made.
func (p *pass) hasFirst() bool { return p.from != route.Start && p.from != route.WeighUpTo }

// leastMarked is the least relative variance of a first solution of at most a volume
// with its source, at a concentration, where it is made up to a mark and uses the piece that is
// free as needed.
func (p *pass) leastMarked(b *Bench, need cover, volume, concentration float64) float64 {
	least := math.Inf(1)
	for i := range p.firsts {
		f := &p.firsts[i]
		if f.volume > volume {
			break
		}
		least = min(least, f.with[need]+p.leastSource(b, concentration*f.volume))
	}
	return least
}

// leastSource is the least relative variance of so much solute in g.
func (p *pass) leastSource(b *Bench, grams float64) float64 {
	if p.from == route.Weigh {
		return b.sourceBound.at(grams)
	}
	return 0
}
