package purchase

import (
	"cmp"
	"context"
	"math"
	"slices"
	"sort"

	"minim/equipment"
	"minim/report/words/note"
	"minim/uncertainty/plan"
	"minim/uncertainty/portable"
	"minim/uncertainty/route"
	"minim/uncertainty/search"
)

// BreakEven is the coarsest readability that is good enough.
type BreakEven struct {
	Dilutions int
	// Readability in g on the series 1, 2, 5; 0 where none is good enough.
	Readability float64
	// LeftOver in mL of the route with the least, there.
	LeftOver float64
	// CutShort: a search had tried enough before a route was found, so that a coarser
	// one may do as well.
	CutShort bool
}

// Curve is a line of the figure: Relative[i] is the relative expanded uncertainty
// of the tightest route with so many dilutions on a balance that reads to
// Readability[i] in g, rising, of those whose expected strength is within a tenth of the
// target. Where there is none, it is +Inf. CutShort[i]: the search had
// tried enough; it is then that of the tightest that is known, and there may be a tighter
// one.
type Curve struct {
	Dilutions             int
	Readability, Relative []float64
	CutShort              []bool
}

// knownRoute is how tight a route with so many dilutions is on a balance that reads to
// readability.
type knownRoute struct {
	dilutions             int
	readability, relative float64
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

// readabilities works out what hangs on the readability of the balance.
func (b *Purchase) readabilities(ctx context.Context, o plan.Options) (err error) {
	limits := o.Search()
	b.MostLeftOver = limits.LeftOverAllowed(b.Prep)
	if !b.Prep.CountsMass() {
		return nil // nothing can be weighed
	}
	if b.DirectML, err = b.directFrom(limits.Coverage); err != nil {
		return err
	}
	bench, err := search.NewBench(b.Prep, limits)
	if err != nil {
		return err
	}
	if b.BreakEven, err = b.breakEvens(ctx, bench, o); err != nil {
		return err
	}
	b.Curves, err = b.curves(ctx, bench, o)
	return err
}

// breakEvens finds for each number of dilutions the coarsest readability, from 1 µg
// to 10 g, at which a balance that is otherwise like one of the kit still allows a
// route that reaches the chance asked for, simulated. A coarser one never does where a finer
// does not.
func (b *Purchase) breakEvens(ctx context.Context, bench *search.Bench, o plan.Options) ([]BreakEven, error) {
	if len(b.Prep.Tolerances) == 0 {
		return nil, nil
	}
	readabilities := series(-6, 1) // in g
	var list []BreakEven
	for n := range o.Steps + 1 {
		e := BreakEven{Dilutions: n}
		var fault error
		sort.Search(len(readabilities), func(i int) bool {
			leftOver, does, cutShort, err := b.goodEnough(ctx, bench, readabilities[i], o, n)
			if err != nil {
				fault = err
			}
			if does {
				e.Readability, e.LeftOver = readabilities[i], search.Volume(leftOver)
			} else {
				e.CutShort = e.CutShort || cutShort
			}
			return !does
		})
		if fault != nil {
			return nil, fault
		}
		list = append(list, e)
	}
	return list, nil
}

// nearlyGood is how far below the chance asked for that of first order may be for a route that
// is simulated.
const nearlyGood = 0.02

// goodEnough is the least left over of the routes with so many dilutions on a balance that
// reads to d which reach the chance that is asked for when they are simulated, as all that is
// said of a route goes by. They are those that do to first order; where none of those does, the
// surest is tried.
func (b *Purchase) goodEnough(ctx context.Context, bench *search.Bench, d float64, o plan.Options, dilutions int) (leftOver float64, does, cutShort bool, err error) {
	least := func(k *search.Bench) ([]route.Result, error) { return k.LeastWith(ctx, dilutions, b.Prep.LeastChance) }
	surest := func(k *search.Bench) ([]route.Result, error) {
		return k.SurestWith(ctx, dilutions, b.Prep.LeastChance-nearlyGood)
	}
	for _, find := range []finds{least, surest} {
		list, cut, err := b.withDigit(bench, d, find)
		if err != nil {
			return 0, false, false, err
		}
		cutShort = cutShort || cut
		slices.SortStableFunc(list, func(a, b route.Result) int { return cmp.Compare(a.LeftOverML, b.LeftOverML) })
		for i := range list {
			r := &list[i]
			chance, err := b.Prep.ChanceOf(ctx, r.Route, o.Settings)
			if err != nil {
				return 0, false, false, err
			}
			b.known = append(b.known, knownRoute{dilutions, d, r.GiveOrTake()})
			if chance >= b.Prep.LeastChance {
				return r.LeftOverML, true, cutShort, nil
			}
		}
	}
	return 0, false, cutShort, nil
}

// finds finds routes on a bench.
type finds func(*search.Bench) ([]route.Result, error)

// withDigit finds routes on a bench whose only source is a balance that is like one of the kit
// but reads to d.
func (b *Purchase) withDigit(bench *search.Bench, d float64, find finds) (list []route.Result, cutShort bool, err error) {
	reading, err := bench.From(b.Like.WithReadability(d))
	if err != nil {
		return nil, false, err
	}
	list, err = find(reading)
	b.missed.add(note.Of("on-a-balance-reading-to", "", equipment.G(d)), reading.NotSearched)
	return list, reading.CutShort, err
}

// curves works out the lines of the figure at powers of ten, from a decade finer
// than the finest of all balances and candidates to the coarsest.
func (b *Purchase) curves(ctx context.Context, bench *search.Bench, o plan.Options) ([]Curve, error) {
	from, to := exponents(b.Prep.Kit)
	var list []Curve
	for n := range o.Steps + 1 {
		c := Curve{Dilutions: n}
		tightest := func(k *search.Bench) ([]route.Result, error) { return k.TightestWith(ctx, n) }
		for e := from; e <= to; e++ {
			d := decimal(1, e)
			list, cutShort, err := b.withDigit(bench, d, tightest)
			if err != nil {
				return nil, err
			}
			least := math.Inf(1)
			if len(list) > 0 {
				least = list[0].GiveOrTake()
			}
			c.Readability, c.Relative, c.CutShort = append(c.Readability, d), append(c.Relative, least), append(c.CutShort, cutShort)
		}
		c.takeKnown(b.known)
		list = append(list, c)
	}
	return list, nil
}

// slack is how far two readabilities may differ in their last digits.
const slack = 1e-9

// takeKnown puts in what is known of other searches, where it is tighter: where one was cut
// short, or a route is good enough that is off by more than a tenth. A route on a
// balance that reads coarser can be made on one that reads to a power of ten as well, and is
// no worse there.
func (c *Curve) takeKnown(known []knownRoute) {
	for i := len(c.Relative) - 1; i >= 0; i-- {
		if i+1 < len(c.Relative) {
			c.Relative[i] = min(c.Relative[i], c.Relative[i+1])
		}
		for _, k := range known {
			if k.dilutions == c.Dilutions && k.readability >= c.Readability[i]*(1-slack) {
				c.Relative[i] = min(c.Relative[i], k.relative)
			}
		}
	}
}

// exponents of ten between which all readabilities of a kit lie, and a decade finer;
// from is above to where there are none.
func exponents(k *equipment.Kit) (from, to int) {
	low, high := math.Inf(1), 0.0
	for _, b := range slices.Concat(k.Balances, k.Candidates.Balances) {
		low, high = min(low, b.Readability), max(high, b.Readability)
	}
	if high == 0 {
		return 0, -1
	}
	return portable.Decade(low*(1+slack)) - 1, portable.Decade(high*(1-slack)) + 1
}
