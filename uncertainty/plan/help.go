package plan

import (
	"cmp"
	"context"
	"slices"

	"minim/equipment"
	"minim/equipment/quantity"
	"minim/report/words/note"
	"minim/uncertainty/route"
	"minim/uncertainty/search"
)

// Help is one change that would bring a route nearer to the tolerance.
type Help struct {
	// Change is what would be done otherwise.
	Change note.Note
	// Chance of being inside that the best route then has, of those that were tried; CutShort: there are others.
	Chance   float64
	CutShort bool
}

// finer is how much finer a balance is supposed to read.
const finer = 10

// briefly is how many candidates are tried for what is no more than a hint, about a
// second's worth on two processors.
const briefly = 10_000_000

// helps tries each change by itself, and lists those that give a greater chance
// than before.
//
// Each is searched for briefly, so that it may help even more.
func helps(ctx context.Context, p *route.Prep, o Options, chosen *route.Result) ([]Help, error) {
	o.Each = briefly
	wider := chosen.MonteCarlo.Within(p.Target.Value, p.LeastChance) / p.Target.Value
	list := []Help{{note.Of("wider-tolerance", "", quantity.Percent(wider)), p.LeastChance, false}}
	for _, c := range changedPreps(p) {
		best, cut, err := bestChance(ctx, c.prep, o, chosen.Chance())
		if err != nil {
			return nil, err
		}
		list = append(list, Help{c.change, best, cut})
	}
	list = slices.DeleteFunc(list, func(h Help) bool { return h.Chance < chosen.Chance()+Noticed })
	slices.SortStableFunc(list, func(a, b Help) int { return cmp.Compare(b.Chance, a.Chance) })
	return list, nil
}

// Noticed is by how much a chance must grow to be worth saying.
const Noticed = 0.01

type changedPrep struct {
	change note.Note
	prep   *route.Prep
}

// changedPreps lists the changes, each with the prep as it then is.
func changedPreps(p *route.Prep) []changedPrep {
	var list []changedPrep
	add := func(n note.Note, change func(q *route.Prep)) {
		q := *p
		change(&q)
		list = append(list, changedPrep{n, &q})
	}
	for _, name := range p.Kit.Candidates.Names() {
		add(note.Of("another-instrument", name), func(q *route.Prep) { q.Kit = p.Kit.With(name) })
	}
	for _, b := range p.Kit.Balances {
		d := b.Readability / finer
		add(note.Of("finer-balance", b.Name, equipment.G(d)), func(q *route.Prep) {
			q.Kit = search.WithBalances(p.Kit, append(slices.Clip(p.Kit.Balances), b.WithReadability(d))...)
		})
	}
	if p.Bench.Reading != equipment.Careful {
		add(note.Of("reading-carefully", ""), func(q *route.Prep) { q.Bench.Reading = equipment.Careful })
	}
	add(note.Of("making-more", "", equipment.ML(quantity.Round(2*p.Volume, 3))), func(q *route.Prep) { q.Volume *= 2 })
	return list
}

// bestChance is the chance of being inside of the route that is most likely to be; 0 where
// there is none worth listing, or none above another; that of first order differs from it by less than is [Noticed]. Cut:
// not all were tried.
func bestChance(ctx context.Context, p *route.Prep, o Options, above float64) (chance float64, cut bool, err error) {
	b, err := search.NewBench(p, o.Search())
	if err != nil {
		return 0, false, err
	}
	surest, err := b.Surest(ctx, above)
	if err != nil || surest == nil {
		return 0, b.CutShort, err
	}
	chance, err = p.ChanceOf(ctx, surest.Route, o.Settings)
	return chance, b.CutShort, err
}
