package plan

import (
	"context"

	"minim/uncertainty/route"
	"minim/uncertainty/search"
)

// Best is the route that is recommended on a bench, simulated, as by [Search]; nil where the
// bench allows none. The bench that it returns says what was not searched.
func Best(ctx context.Context, p *route.Prep, o Options) (*route.Result, *search.Bench, error) {
	b, err := search.NewBench(p, o.Search())
	if err != nil {
		return nil, nil, err
	}
	list, err := b.Find(ctx)
	if err != nil || len(list) == 0 {
		return nil, b, err
	}
	l, err := newPool(ctx, p, list, o)
	if err != nil {
		return nil, b, err
	}
	places, use, err := l.settle(ctx)
	if err != nil || use < 0 {
		return nil, b, err
	}
	return &l.results[places[use]], b, nil
}
