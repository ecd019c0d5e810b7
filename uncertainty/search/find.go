package search

import (
	"cmp"
	"context"
	"slices"

	"minim/report/words/note"
	"minim/uncertainty"
	"minim/uncertainty/route"
)

// Find finds the routes to choose from, by number of measurements and then by what they leave
// over: those that leave least over at each level of chance; where none reaches what is asked
// for, those at lower ones and the surest; and where all miss by far, the one that is least
// off. Where the tightest is preferred, it is among them. They are assessed, and have no names.
func (b *Bench) Find(ctx context.Context) ([]route.Result, error) {
	list, err := b.find(ctx)
	return results(list), err
}

// Where one of these shrinks or grows as it is mixed, which no factor knows, those come beside them in
// which solvent is only added up to marks.
func (b *Bench) find(ctx context.Context) ([]found, error) {
	list, err := b.byFactors(ctx)
	mixes := func(f found) bool {
		return slices.ContainsFunc(f.Analytic.Budget, func(l uncertainty.Contribution) bool { return l.Group.Kind == route.Mixing })
	}
	if err != nil || b.options.filled || !slices.ContainsFunc(list, mixes) {
		return list, err
	}
	o := b.options
	o.filled = true
	filled, err := NewBench(b.prep, o)
	if err != nil {
		return nil, err
	}
	others, err := filled.byFactors(ctx)
	if filled.CutShort {
		b.cut(filled.Untried)
	}
	note.Add(&b.NotSearched, filled.NotSearched...)
	return with(list, others), err
}

// byFactors finds routes as if measured volumes added up.
func (b *Bench) byFactors(ctx context.Context) ([]found, error) {
	p, o := b.prep, b.options
	list, err := newSearch(b, o, levelled(p, b.coverage)).result(ctx)
	reaches := func(f found) bool { return f.merit.worth >= p.LeastChance }
	if err == nil && len(p.Tolerances) > 0 && !slices.ContainsFunc(list, reaches) {
		var others []found
		others, err = b.findLower(ctx)
		list = with(list, others)
	}
	if err == nil && len(list) == 0 {
		list, err = b.nearest(ctx, tightness(p, b.coverage))
	}
	if err == nil && o.Prefer == route.Tightest {
		var tightest []found
		tightest, err = b.nearest(ctx, tightness(p, b.coverage))
		list = with(list, tightest)
	}
	return list, err
}

// findLower finds the surest route, and those that leave least over at chances below it.
func (b *Bench) findLower(ctx context.Context) ([]found, error) {
	surest, err := b.nearest(ctx, newJudge(b.prep, b.coverage, tooLittle, enough))
	if err != nil || len(surest) == 0 || surest[0].merit.worth < lower[0] {
		return surest, err
	}
	list, err := newSearch(b, b.options, atLevels(b.prep, b.coverage, lower...)).result(ctx)
	return with(list, surest), err
}

// lower are the levels of chance that are looked for where none reaches what is asked for.
var lower = []float64{0.5, 0.8}

// with adds the routes of another list that are not there yet.
func with(list, others []found) []found {
	for _, f := range others {
		if !slices.ContainsFunc(list, func(g found) bool { return g.signature == f.signature }) {
			list = append(list, f)
		}
	}
	slices.SortStableFunc(list, func(a, b found) int { return a.merit.compare(b.merit) })
	return list
}

// result searches, and returns what was found.
func (s *search) result(ctx context.Context) ([]found, error) {
	if err := s.run(ctx); err != nil {
		return nil, err
	}
	return s.found(ctx)
}

// nearest finds the route that is worth most, whatever it leaves over.
func (b *Bench) nearest(ctx context.Context, j judge) ([]found, error) {
	j.worthOnly = true
	list, err := newSearch(b, b.options, j).result(ctx)
	slices.SortStableFunc(list, func(a, b found) int { return cmp.Compare(b.merit.worth, a.merit.worth) })
	return list[:min(1, len(list))], err
}

// results are what was found without what it was compared by.
func results(list []found) []route.Result {
	var of []route.Result
	for i := range list {
		of = append(of, list[i].Result)
	}
	return of
}

// Surest finds the route that is most likely to be inside the tolerance, or the tightest without
// one, whatever it leaves over; nil where none has a chance worth listing, or so great a one.
func (b *Bench) Surest(ctx context.Context, atLeast float64) (*route.Result, error) {
	list, err := b.nearest(ctx, newJudge(b.prep, b.coverage, min(max(tooLittle, atLeast), enough), enough))
	if err != nil || len(list) == 0 {
		return nil, err
	}
	return &list[0].Result, nil
}

// LeastWith finds the routes by volume with just so many dilutions that leave least over of those
// that reach a chance.
func (b *Bench) LeastWith(ctx context.Context, dilutions int, chance float64) ([]route.Result, error) {
	return b.only(ctx, newJudge(b.prep, b.coverage, chance, chance), dilutions)
}

// SurestWith finds the surest routes by volume with just so many dilutions, of those that reach
// a chance.
func (b *Bench) SurestWith(ctx context.Context, dilutions int, chance float64) ([]route.Result, error) {
	j := newJudge(b.prep, b.coverage, chance, enough)
	j.worthOnly = true
	return b.only(ctx, j, dilutions)
}

// TightestWith finds the routes by volume with just so many dilutions that have the least relative
// expanded uncertainty, of those whose expected strength is within a tenth of the target.
func (b *Bench) TightestWith(ctx context.Context, dilutions int) ([]route.Result, error) {
	j := tightness(b.prep, b.coverage)
	j.worthOnly, j.spreadOnly = true, true
	return b.only(ctx, j, dilutions)
}

// only finds routes by volume with just so many dilutions.
func (b *Bench) only(ctx context.Context, j judge, dilutions int) ([]route.Result, error) {
	list, err := only(b, b.options, j, dilutions).result(ctx)
	return results(list), err
}

// Dilutions finds the routes by volume with just so many dilutions as the options say that no
// other beats at any chance. They have no names; notSearched says what was left out.
func Dilutions(ctx context.Context, p *route.Prep, o Options) (routes []*route.Route, notSearched []note.Note, err error) {
	b, err := NewBench(p, o)
	if err != nil || len(b.dilutions) == 0 {
		return nil, nil, err
	}
	s := only(b, o, newJudge(p, b.coverage, tooLittle, enough), o.Steps)
	list, err := s.result(ctx)
	for i := range list {
		routes = append(routes, list[i].Route)
	}
	return routes, s.NotSearched, err
}

// only is a search of the routes by volume with so many dilutions.
func only(b *Bench, o Options, j judge, dilutions int) *search {
	o.Steps = dilutions
	s := newSearch(b, o, j)
	s.only = true
	return s
}
