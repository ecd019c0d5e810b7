package route

import "cmp"

// criterion is what decides between two routes.
type criterion string

// The criteria, in the order in which they decide.
const (
	// alike: nothing decides, and the one that stands first in the file is used.
	alike criterion = "alike"
	// byUse: one makes enough and says something of the amount, the other not.
	byUse criterion = "use"
	// byHolding: without a tolerance, what holds the target within less.
	byHolding criterion = "holding"
	// byMeeting: one reaches the chance that is asked for, the other not.
	byMeeting criterion = "meeting"
	// byChance: neither reaches it, and one has the better chance.
	byChance criterion = "chance"
	// byLeftOver: one leaves less over.
	byLeftOver criterion = "left-over"
	// byOperations: one takes fewer measurements.
	byOperations criterion = "operations"
)

// Rank says which of two possible routes is to be used, a where it is negative and b
// where it is positive, and what decides: see judge, which goes by it.
func (p *Prep) Rank(a, b *Result) (int, criterion) {
	for _, r := range []struct {
		applies bool
		order   int
		by      criterion
	}{
		{true, trueFirst(p.usable(a), p.usable(b)), byUse},
		{len(p.Tolerances) == 0, cmp.Compare(a.HoldsWithin, b.HoldsWithin), byHolding},
		{true, trueFirst(p.Meets(a), p.Meets(b)), byMeeting},
		{!p.Meets(a), cmp.Compare(b.Chance(), a.Chance()), byChance},
		{p.Meets(a) && !SameVolume(a.LeftOverML, b.LeftOverML), cmp.Compare(a.LeftOverML, b.LeftOverML), byLeftOver},
		{p.Meets(a), cmp.Compare(a.Operations, b.Operations), byOperations},
	} {
		if r.applies && r.order != 0 {
			return r.order, r.by
		}
	}
	return 0, alike
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
