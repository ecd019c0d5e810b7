package route

import "cmp"

// Criterion is what decides between two routes.
type Criterion int

// The criteria, in the order in which they decide.
const (
	// Alike: nothing decides, and the one that stands first in the file is used.
	Alike Criterion = iota
	// ByUse: one makes enough and says something of the amount, the other not.
	ByUse
	// byHolding: without a tolerance, what holds the target within less.
	byHolding
	// ByMeeting: one reaches the chance that is asked for, the other not.
	ByMeeting
	// ByChance: neither reaches it, and one has the better chance.
	ByChance
	// ByLeftOver: one leaves less over.
	ByLeftOver
	// ByOperations: one takes fewer measurements.
	ByOperations
)

// Rank says which of two possible routes is to be used, a where it is negative and b
// where it is positive, and what decides: see judge, which goes by it.
func (p *Prep) Rank(a, b *Result) (int, Criterion) {
	for _, r := range []struct {
		applies bool
		order   int
		by      Criterion
	}{
		{true, trueFirst(p.usable(a), p.usable(b)), ByUse},
		{len(p.Tolerances) == 0, cmp.Compare(a.HoldsWithin, b.HoldsWithin), byHolding},
		{true, trueFirst(p.Meets(a), p.Meets(b)), ByMeeting},
		{!p.Meets(a), cmp.Compare(b.Chance(), a.Chance()), ByChance},
		{p.Meets(a) && !SameVolume(a.LeftOverML, b.LeftOverML), cmp.Compare(a.LeftOverML, b.LeftOverML), ByLeftOver},
		{p.Meets(a), cmp.Compare(a.Operations, b.Operations), ByOperations},
	} {
		if r.applies && r.order != 0 {
			return r.order, r.by
		}
	}
	return 0, Alike
}

// trueFirst is negative where only a is true, and positive where only b is.
func trueFirst(a, b bool) int {
	switch {
	case a == b:
		return 0
	case a:
		return -1
	}
	return 1
}

// Better reports whether one possible route is to be used rather than another.
func (p *Prep) Better(a, b *Result) bool {
	order, _ := p.Rank(a, b)
	return order < 0
}
