package plan

import (
	"context"
	"math"
	"sort"

	"minim/equipment"
	"minim/uncertainty/route"
)

// BreakEven is the coarsest readability that is good enough.
type BreakEven struct {
	Dilutions int
	// Readability in g on the series 1, 2, 5; 0 where none is good enough.
	Readability float64
	// LeftOver in mL of the route with the least, there.
	LeftOver float64
}

// Curve is a line of the figure: Relative[i] is the relative expanded uncertainty
// of the tightest route with so many dilutions on a balance that reads to
// Readability[i] in g, rising. Where there is none, it is +Inf.
type Curve struct {
	Dilutions             int
	Readability, Relative []float64
}

// series lists 1, 2 and 5 times the powers of ten from one exponent to another,
// rising.
func series(from, to int) []float64 {
	var list []float64
	for e := from; e < to; e++ {
		for _, x := range []float64{1, 2, 5} {
			list = append(list, decimal(x, e))
		}
	}
	return append(list, decimal(1, to))
}

// decimal is x times a power of ten as it would be written.
func decimal(x float64, exponent int) float64 {
	if exponent < 0 {
		return x / math.Pow10(-exponent)
	}
	return x * math.Pow10(exponent)
}

// breakEvens finds for each number of dilutions the coarsest readability, from 1 µg
// to 10 g, at which a balance that is otherwise like one of the kit still allows a
// route that reaches the chance asked for. A coarser one never does where a finer
// does not.
func breakEvens(ctx context.Context, p *route.Prep, o Options, like *equipment.Balance) ([]BreakEven, error) {
	if len(p.Tolerances) == 0 {
		return nil, nil
	}
	readabilities := series(-6, 1)
	var list []BreakEven
	for n := range o.Steps + 1 {
		e := BreakEven{Dilutions: n}
		var fault error
		sort.Search(len(readabilities), func(i int) bool {
			leftOver, found, err := leastLeftOver(ctx, on(p, like.WithReadability(readabilities[i])), o, n)
			if err != nil {
				fault = err
			}
			if found {
				e.Readability, e.LeftOver = readabilities[i], leftOver
			}
			return !found
		})
		if fault != nil {
			return nil, fault
		}
		list = append(list, e)
	}
	return list, nil
}

// on is a prep with one balance only.
func on(p *route.Prep, b *equipment.Balance) *route.Prep {
	q := *p
	q.Kit = withBalances(p.Kit, b)
	q.Stocks, q.Packets = nil, nil
	return &q
}

// leastLeftOver is the least that a route by volume with so many dilutions leaves
// over that reaches the chance asked for.
func leastLeftOver(ctx context.Context, p *route.Prep, o Options, dilutions int) (mL float64, reached bool, err error) {
	b, err := newBench(p, o)
	if err != nil {
		return 0, false, err
	}
	list, err := only(b, o, newJudge(p, b.coverage, p.LeastChance, p.LeastChance), dilutions).result(ctx)
	mL = math.Inf(1)
	for i := range list {
		mL = min(mL, list[i].LeftOverML)
	}
	return mL, len(list) > 0, err
}

// only is a search of the routes by volume with so many dilutions.
func only(b *bench, o Options, j judge, dilutions int) *search {
	o.Steps = dilutions
	s := newSearch(b, o, j)
	s.fewest, s.byVolume = dilutions, true
	return s
}

// curves works out the lines of the figure, for readabilities from the finest of
// all balances and candidates to the coarsest, and a step further.
func curves(ctx context.Context, p *route.Prep, o Options, like *equipment.Balance) ([]Curve, error) {
	from, to := exponents(p.Kit)
	var list []Curve
	for n := range o.Steps + 1 {
		c := Curve{Dilutions: n}
		for _, d := range series(from, to) {
			tightest, err := tightestOf(ctx, on(p, like.WithReadability(d)), o, n)
			if err != nil {
				return nil, err
			}
			c.Readability, c.Relative = append(c.Readability, d), append(c.Relative, tightest)
		}
		list = append(list, c)
	}
	return list, nil
}

// exponents of ten between which all readabilities of a kit lie, and a decade finer.
func exponents(k *equipment.Kit) (from, to int) {
	low, high := math.Inf(1), 0.0
	for _, list := range [][]*equipment.Balance{k.Balances, k.Candidates.Balances} {
		for _, b := range list {
			low, high = min(low, b.Readability), max(high, b.Readability)
		}
	}
	return int(math.Floor(math.Log10(low)+1e-9)) - 1, int(math.Ceil(math.Log10(high) - 1e-9))
}

// tightestOf is the least relative expanded uncertainty of the routes by volume with
// so many dilutions; +Inf where there is none.
func tightestOf(ctx context.Context, p *route.Prep, o Options, dilutions int) (float64, error) {
	b, err := newBench(p, o)
	if err != nil {
		return 0, err
	}
	j := tightness(b.coverage)
	j.worthOnly = true
	list, err := only(b, o, j, dilutions).result(ctx)
	if err != nil || len(list) == 0 {
		return math.Inf(1), err
	}
	return relative(&list[0].Result), nil
}
