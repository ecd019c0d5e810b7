package search

import (
	"cmp"
	"math"
	"slices"
	"sort"
)

// merit is what routes are compared by. A smaller left over and fewer operations
// are better, and a greater worth: the chance of being inside, or minus the
// relative expanded uncertainty where no tolerance is given.
//
// Level is the highest of the chances looked for that the worth reaches. Where only these
// are looked for, the worth tells routes apart that agree in all else; otherwise each worth
// is a level of its own.
type merit struct {
	level, worth float64
	leftOver     float64 // in mL
	operations   int
}

// Volume rounds a volume in mL so that sums of the same volumes are equal.
func Volume(mL float64) float64 { return math.Round(mL*1e9) / 1e9 }

// slack is how far two figures may differ in the last digits of floating point
// and still count as equal in the search. The front itself is sorted out without.
const slack = 1e-9

// beats reports whether a is at least as good as b in all and better in one.
func (a merit) beats(b merit) bool {
	return a.level >= b.level && a.leftOver <= b.leftOver && a.operations <= b.operations &&
		(a.level > b.level || a.leftOver < b.leftOver || a.operations < b.operations || a.worth > b.worth)
}

// compare puts few operations first, then little left over, then worth.
func (a merit) compare(b merit) int {
	return cmp.Or(cmp.Compare(a.operations, b.operations), cmp.Compare(a.leftOver, b.leftOver), cmp.Compare(b.worth, a.worth))
}

// front holds what no other beats. It does not change: add returns another.
type front struct {
	places places
	// stairs[n] are the steps with n operations, rising in left over and so,
	// but for the slack, in worth.
	stairs [][]stair
	// bars[n] are what routes with n operations or more must pass, rising in left
	// over.
	bars [][]bar
}

// stair is a merit and all chains that have it.
type stair struct {
	merit
	// least is what a route must have to be worth as much, next what it must have to be
	// worth more than all that leaves over less, or takes fewer operations.
	least, next need
	// apart: no other worth is of this level.
	apart  bool
	chains []chain
}

// need is the relative variance above which, and the strengths outside of which, a route is
// worth less. With an infinitely negative variance there is none that is worth so much.
type need struct {
	most      float64
	strengths span
}

// surelyBeats reports whether a stair beats m whatever the last digits of worths
// are.
func (s *stair) surelyBeats(m merit) bool {
	if s.leftOver > m.leftOver || s.operations > m.operations {
		return false
	}
	less := s.leftOver < m.leftOver-slack || s.operations < m.operations
	if s.apart {
		return s.worth > m.worth+slack || s.next.most < 0 && less
	}
	return s.level > m.level || s.level == m.level && (less || s.worth > m.worth+slack)
}

// beaten reports whether a member surely beats m.
func (f *front) beaten(m merit) bool {
	for n := 0; n < len(f.stairs) && n <= m.operations; n++ {
		stairs := f.stairs[n]
		for i := upTo(stairs, m.leftOver) - 1; i >= 0 && stairs[i].level >= m.level; i-- {
			if stairs[i].surelyBeats(m) {
				return true
			}
		}
	}
	return false
}

// upTo is the number of stairs with no more left over than that.
func upTo(stairs []stair, leftOver float64) int {
	return sort.Search(len(stairs), func(i int) bool { return stairs[i].leftOver > leftOver })
}

// add returns the front with a chain that is not beaten, and without those that
// it beats.
func (f *front) add(s stair) *front {
	m := s.merit
	g := &front{places: f.places, stairs: make([][]stair, max(len(f.stairs), m.operations+1))}
	copy(g.stairs, f.stairs)
	for n := m.operations; n < len(g.stairs); n++ {
		g.stairs[n] = slices.DeleteFunc(slices.Clone(g.stairs[n]), func(other stair) bool { return s.surelyBeats(other.merit) })
	}
	own := g.stairs[m.operations]
	at, found := slices.BinarySearchFunc(own, m, func(other stair, m merit) int {
		return cmp.Or(cmp.Compare(other.leftOver, m.leftOver), cmp.Compare(other.worth, m.worth))
	})
	if found {
		own[at].chains = f.some(append(slices.Clip(own[at].chains), s.chains...))
	} else {
		g.stairs[m.operations] = slices.Insert(own, at, s)
	}
	g.setBars()
	return g
}

// mostAlike routes of one merit are kept: those of pieces alike are the same but for their
// names.
const mostAlike = 10

// some keeps no more chains of one merit than that: the first by their signatures, whatever
// order they were found in.
func (f *front) some(list []chain) []chain {
	if len(list) <= mostAlike {
		return list
	}
	slices.SortFunc(list, func(a, b chain) int { return cmp.Compare(f.places.signature(a.route()), f.places.signature(b.route())) })
	return slices.Clip(list[:mostAlike])
}

// chains lists all members.
func (f *front) chains() []chain {
	var all []chain
	for _, stairs := range f.stairs {
		for _, s := range stairs {
			all = append(all, s.chains...)
		}
	}
	return all
}

// bar is what a route must have which leaves over so much or more: with a greater
// variance, or another strength, it is beaten.
type bar struct {
	leftOver float64
	need
}

// setBars works out the bars of the stairs. Those with fewer operations hold for
// all with more as well. What leaves over more, or takes more operations, must reach
// the next level; of the last there is none.
func (f *front) setBars() {
	f.bars = make([][]bar, len(f.stairs), len(f.stairs)+1)
	var below []bar
	for n, stairs := range f.stairs {
		own := slices.Clone(below)
		for i := range stairs {
			s := &stairs[i]
			own = append(own, bar{s.leftOver, s.least}, bar{s.leftOver + 2*slack, s.next})
			below = append(below, bar{s.leftOver, s.next})
		}
		f.bars[n] = lowest(own)
	}
	f.bars = append(f.bars, lowest(below))
}

// lowest sorts bars by left over and keeps those that are lower than all before.
func lowest(bars []bar) []bar {
	slices.SortFunc(bars, func(a, b bar) int { return cmp.Or(cmp.Compare(a.leftOver, b.leftOver), cmp.Compare(a.most, b.most)) })
	kept := bars[:0]
	for _, b := range bars {
		if len(kept) == 0 || b.most < kept[len(kept)-1].most {
			kept = append(kept, b)
		}
	}
	return kept
}

// barsFor are the bars for routes with so many operations.
func (f *front) barsFor(operations int) []bar {
	if len(f.bars) == 0 {
		return nil
	}
	return f.bars[min(operations, len(f.bars)-1)]
}

// beatsAll reports whether all routes with at least so many operations, left over
// and relative variance are beaten.
func (f *front) beatsAll(operations int, leftOver, leastVariance float64) bool {
	bars := f.barsFor(operations)
	at := barAt(bars, leftOver)
	return at >= 0 && leastVariance > bars[at].most
}

// barAt is the place of the last bar with no more left over than that, -1 without
// one.
func barAt(bars []bar, leftOver float64) int {
	return sort.Search(len(bars), func(i int) bool { return bars[i].leftOver > leftOver }) - 1
}
