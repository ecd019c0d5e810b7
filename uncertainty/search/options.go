package search

import (
	"cmp"
	"math"

	"minim/equipment"
	"minim/uncertainty/contest"
	"minim/uncertainty/route"
)

// Options of a search.
type Options struct {
	// Limits of the routes. What is preferred matters where it is the tightest alone, which
	// is then looked for as well.
	route.Limits
	// All searches as well the routes in which one piece pulls both ways, so that its errors
	// cancel: it is taken with, and filled or solvent added with it.
	All bool
	// Fine takes every graduation of a scale, not only the numbered marks.
	Fine bool
	// filled: solvent is only added up to marks.
	filled bool
	// Work is the number of candidates after which all searches stop that share Tried, which counts them, and say what they
	// have not searched; 0 means never. They are the same ones on any machine. Each search may try one of
	// so many Parts, one without, of what those before it left, and Each at the most, where that is stated.
	Work, Parts, Each int64
	Tried             *int64
	// Coverage probability of expanded uncertainties; 0 means 0.95.
	Coverage float64
	// Progress, when not nil, is called when a part of the search is done, with
	// how many there are.
	Progress func(done, parts int)
}

func (o *Options) coverage() float64 { return cmp.Or(o.Coverage, 0.95) }

// room is how many candidates the next search may try.
func (o *Options) room() int64 {
	room := int64(math.MaxInt64)
	if o.Work > 0 {
		room = max(0, o.Work-*o.Tried) / max(1, o.Parts)
	}
	if o.Each > 0 {
		room = min(room, o.Each)
	}
	return room
}

// Limited is a prep without the instruments that are not to be used.
func (o *Options) Limited(p *route.Prep) *route.Prep {
	if len(o.Without) == 0 {
		return p
	}
	q := *p
	q.Kit = p.Kit.Without(o.Without...)
	return &q
}

// MostLeftOver in mL that a route of a prep may leave over, with a little room for rounding.
func (o *Options) MostLeftOver(p *route.Prep) float64 {
	return min(limit(o.LeftOver), limit(o.Volume)-p.Volume)
}

// LeftOverAllowed in mL, as it is stated or follows; infinite without a limit.
func (o *Options) LeftOverAllowed(p *route.Prep) float64 {
	return min(stated(o.LeftOver), stated(o.Volume)-p.Volume)
}

// MostSolute in g that a route may use, with a little room for rounding.
func (o *Options) MostSolute() float64 { return limit(o.Solute) }

// Strongest concentration of a solution that may be made of the solute of a prep, in g/mL.
func (o *Options) Strongest(p *route.Prep) float64 {
	return contest.Strongest(p, o.Limits)
}

// limit is infinite where none is stated, and a little more than what is.
func limit(x float64) float64 { return float64(stated(x) * (1 + 1e-9)) }

// stated is what is stated, infinite where nothing is.
func stated(x float64) float64 {
	if x == 0 {
		return math.Inf(1)
	}
	return x
}

// WithBalances is a kit with other balances than its own.
func WithBalances(k *equipment.Kit, balances ...*equipment.Balance) *equipment.Kit {
	other := *k
	other.Balances = balances
	return &other
}
