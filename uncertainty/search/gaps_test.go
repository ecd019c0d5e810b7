package search

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty/route"
	"minim/uncertainty/smallbench"
)

// What two groups of ways bring together is the least of all pairs of ways that one route may
// have, as the sums over shared influences give it; of three groups, no more than the least of all
// triples. Where a piece is free, it counts nothing for that piece.
func TestGapsAreLowerBounds(t *testing.T) {
	p := smallbench.On(t, smallbench.Prep, smallbench.Kit)
	s := atAnyChance(t, p, quick(2))
	b := s.Bench
	s.pass = newPass(b, route.Weigh, nil)
	require.NoError(t, s.pass.about(context.Background(), b, 1))
	w := s.newWalk(0)
	least := func(groups ...*group) float64 {
		least := math.Inf(1)
		var choose func(at int)
		choose = func(at int) {
			if at == len(groups) {
				least = min(least, w.state.leastVariance()-b.unit.own)
				return
			}
			before := w.state.save()
			for i := range groups[at].ways {
				if m := groups[at].ways[i].making; !w.uses.refuses(m, nil) {
					w.put(m)
					choose(at + 1)
					w.takeBack(m, before)
				}
			}
		}
		choose(0)
		return least
	}
	gaps, some, positive := s.pass.gaps, s.pass.dilutionGroups, 0
	for i := 0; i < len(some); i += 7 {
		for k := range s.pass.firsts {
			f := &s.pass.firsts[k]
			want := least(&some[i], f)
			got := some[i].least + f.least + gaps.between(&some[i], f)
			assert.True(t, math.IsInf(want, 1) && math.IsInf(got, 1) || math.Abs(want-got) <= 1e-5*want, "%v %v", want, got)
			assert.Equal(t, got, some[i].least+f.least+gaps.between(&some[i], f), "as it is known")
			if gaps.between(&some[i], f) > 0 {
				positive++
			}
		}
	}
	assert.Positive(t, positive)
	require.NoError(t, s.pass.about(context.Background(), b, 2))
	gaps = s.pass.gaps
	for i := 0; i < len(some); i += 11 {
		for k := 0; k < len(some); k += 13 {
			f := &s.pass.firsts[(i+k)%len(s.pass.firsts)]
			all := some[i].least + some[k].least + f.least + gaps.between(&some[i], &some[k]) + gaps.between(&some[i], f) + gaps.between(&some[k], f)
			assert.LessOrEqual(t, all, least(&some[i], &some[k], f)*(1+1e-9))
		}
	}
}

// What two groups cover is what either has, or one has of it and the other the rest (constructed).
func TestCoversTogether(t *testing.T) {
	inf := math.Inf(1)
	a, b := ofNone(inf), ofNone(inf)
	a.take(1, 0)
	a.take(5, taking)
	b.take(2, 0)
	b.take(4, filling)
	assert.Equal(t, leasts{1, 5, inf, inf}, a)
	assert.Equal(t, leasts{3, 7, 5, 9}, a.plus(&b))
	assert.Equal(t, a.plus(&b), b.plus(&a))
	b.take(6, cancelling)
	assert.Equal(t, leasts{2, 6, 4, 6}, b)
	assert.Equal(t, leasts{3, 7, 5, 7}, a.plus(&b))
}
