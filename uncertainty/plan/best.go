package plan

import (
	"context"

	"minim/report/words/note"
	"minim/uncertainty/route"
)

// best is the route that is recommended on a bench, simulated, as by [Search]; nil where the
// bench allows none. The bench that it returns says what was not searched.
func best(ctx context.Context, p *route.Prep, o Options) (*route.Result, *bench, error) {
	b, err := newBench(p, o)
	if err != nil {
		return nil, nil, err
	}
	list, err := lookFor(ctx, b, o)
	if err != nil {
		return nil, nil, err
	}
	chosen, err := chosenOf(ctx, p, list, o)
	return chosen, b, err
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
// other beats at any chance. They are neither simulated nor named; notSearched says
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
