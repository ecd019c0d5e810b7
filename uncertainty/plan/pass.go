package plan

import (
	"cmp"
	"context"
	"math"
	"slices"

	"minim/uncertainty/route"
)

// pass is the part of a search that looks at the routes with so many dilutions,
// of which all are made up to a mark, or at least one is measured, and that start
// with a step of one verb.
type pass struct {
	dilutions int
	measured  bool
	from      route.Verb
	pulls     []pull
	// firsts and dilutionGroups are what the bench can make, by volumes. Both rise
	// in the volume that they make, and of one volume in what they bring at the
	// least.
	firsts, dilutionGroups []group
	remainder              *remainder
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
	// number of the group in its list.
	number int
	// measures reports whether one of the ways measures its solvent.
	measures bool
}

// groupWay is a way with the relative variance that it brings into a route of the pass,
// at the least: see the package documentation.
type groupWay struct {
	*making
	least float64
}

// newPass prepares a pass, which can take seconds; its error is that of the context.
func newPass(ctx context.Context, b *bench, dilutions int, measured bool, from route.Verb) (*pass, error) {
	p := &pass{dilutions: dilutions, measured: measured, from: from}
	list := b.dilutions
	if !measured {
		list = slices.DeleteFunc(slices.Clone(list), func(m making) bool { return m.measured })
	}
	p.pulls = b.newPulls(list)
	p.firsts, p.dilutionGroups = p.groups(b.firsts), p.groups(list)
	p.remainder, p.reach = newRemainder(ctx, b, p), newReach(b, p)
	return p, ctx.Err()
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
			groups = append(groups, group{aliquot: m.aliquot, volume: m.volume, ratio: m.ratio})
		}
		groups[at].ways = append(groups[at].ways, groupWay{m, p.leastOf(m)})
		groups[at].measures = groups[at].measures || m.measured
	}
	for i := range groups {
		slices.SortStableFunc(groups[i].ways, func(a, b groupWay) int { return cmp.Compare(a.least, b.least) })
		groups[i].least, groups[i].expected = groups[i].ways[0].least, groups[i].means()
	}
	slices.SortStableFunc(groups, func(a, b group) int {
		return cmp.Or(cmp.Compare(a.volume, b.volume), cmp.Compare(a.least, b.least))
	})
	for i := range groups {
		groups[i].number = i
	}
	return groups
}

// leastOf is the relative variance that a way to make a solution brings into a
// route at the least: its own, and the squares of what it adds to sums that only
// grow.
func (p *pass) leastOf(m *making) float64 {
	least := m.own
	for _, s := range m.shared {
		if p.pulls[s.key] == oneWay {
			least += float64(s.relative * s.relative)
		}
	}
	return least
}

// leastFirst is the least relative variance of a first solution of at most a volume
// with its source, at a concentration.
func (p *pass) leastFirst(b *bench, volume, concentration float64) float64 {
	if p.from == route.Start {
		return 0
	}
	least := math.Inf(1)
	for i := range p.firsts {
		f := &p.firsts[i]
		if f.volume > volume {
			break
		}
		least = min(least, f.least+p.leastSource(b, concentration*f.volume))
	}
	return least
}

// leastSource is the least relative variance of so much solute in g.
func (p *pass) leastSource(b *bench, grams float64) float64 {
	if p.from == route.Weigh {
		return b.sourceBound.at(grams)
	}
	return 0
}

// newPulls sorts the shared influences by how sources, ways to make solutions, and
// what multiplies every route pull at them.
func (b *bench) newPulls(dilutions []making) []pull {
	bySources, always, byFirsts, byDilutions := b.newSigns(), b.newSigns(), b.newSigns(), b.newSigns()
	for i := range b.sources {
		bySources.see(&b.sources[i].factor)
	}
	always.see(&b.unit)
	always.see(&b.evaporated)
	for i := range b.firsts {
		byFirsts.see(&b.firsts[i].factor)
	}
	for i := range dilutions {
		byDilutions.see(&dilutions[i].factor)
	}
	pulls := make([]pull, len(b.keys.influences))
	for k := range pulls {
		pulls[k] = pullOf(bySources[k], always[k], byFirsts[k], byDilutions[k])
	}
	return pulls
}

// signs are those of all contributions to each influence.
type signs []sign

type sign struct{ minus, plus bool }

func (b *bench) newSigns() signs { return make(signs, len(b.keys.influences)) }

func (s signs) see(f *factor) {
	for _, p := range f.shared {
		s[p.key].minus = s[p.key].minus || p.relative < 0
		s[p.key].plus = s[p.key].plus || p.relative > 0
	}
}

func pullOf(sources, always, firsts, dilutions sign) pull {
	minus := sources.minus || always.minus || firsts.minus || dilutions.minus
	plus := sources.plus || always.plus || firsts.plus || dilutions.plus
	switch {
	case !minus || !plus:
		return oneWay
	case sources != sign{}:
		return atLast
	case firsts == sign{}:
		return byDilutions
	}
	return anyWay
}
