package plan

import (
	"context"

	"minim/report/words/note"
	"minim/uncertainty/route"
)

// best is the route that is recommended on a bench, simulated, by the preference of
// the options: of those that reach the chance that is asked for; where none does,
// the one with the greatest chance; where all miss by far or there is no tolerance,
// the tightest. It is nil where the bench allows none. Only what decides is searched,
// which is much less than a whole front. The bench that it returns says what was not
// searched.
func best(ctx context.Context, p *route.Prep, o Options) (*route.Result, *bench, error) {
	b, err := newBench(p, o)
	if err != nil {
		return nil, nil, err
	}
	surest, tightest := newJudge(p, b.coverage, tooLittle, enough), tightness(p, b.coverage)
	surest.worthOnly, tightest.worthOnly = true, true
	judges := []judge{tightest}
	if len(p.Tolerances) > 0 {
		judges = []judge{newJudge(p, b.coverage, max(tooLittle, p.LeastChance-doubt), min(enough, p.Ask().Halved()+doubt)), surest, tightest}
	}
	var chosen *route.Result
	for i, j := range judges {
		if i == 2 {
			o.Work = atMost(o.Work, briefly) // none is good enough anyway
		}
		list, err := newSearch(b, o, j).result(ctx)
		if err != nil {
			return nil, nil, err
		}
		r, err := chosenOf(ctx, p, list, o)
		if err != nil {
			return nil, nil, err
		}
		if r != nil {
			chosen = r
		}
		if chosen != nil && (i > 0 || j.floor < 0 || r.Chance() >= p.LeastChance) {
			break
		}
	}
	return chosen, b, nil
}

// chosenOf chooses one of some routes, simulated; nil where there is none.
func chosenOf(ctx context.Context, p *route.Prep, list []found, o Options) (*route.Result, error) {
	if len(list) == 0 {
		return nil, nil
	}
	l, err := newPool(ctx, p, list, o)
	if err != nil || len(l.results) == 0 {
		return nil, err
	}
	places, use, err := l.settle(ctx)
	if err != nil || use < 0 {
		return nil, err
	}
	return &l.results[places[use]], nil
}

// Dilutions finds the routes by volume with just so many dilutions as the options say that no
// other beats, as [Search] does. They are neither simulated nor named; notSearched says
// what was left out.
func Dilutions(ctx context.Context, p *route.Prep, o Options) (routes []*route.Route, notSearched []note.Note, err error) {
	b, err := newBench(p, o)
	if err != nil || len(b.dilutions) == 0 {
		return nil, nil, err
	}
	s := only(b, o, newJudge(p, b.coverage, tooLittle, enough), o.Steps)
	list, err := s.result(ctx)
	for i := range list {
		routes = append(routes, list[i].Route)
	}
	return routes, s.notSearched, err
}
