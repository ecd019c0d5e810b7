package answer

import (
	"context"

	"minim/report/data"
	"minim/report/figure"
	"minim/report/page"
	"minim/report/words"
	"minim/report/words/glance"
	"minim/uncertainty/purchase"
	"minim/uncertainty/route"
)

var _ = answers("buy", buy, "money")

func buy(ctx context.Context, q *Question) (*Answer, error) {
	q.Search.Settings = q.Settings
	p, before, err := both(q, func(p *route.Prep) (*purchase.Purchase, error) { return purchase.Buy(ctx, p, q.Search) })
	if err != nil {
		return nil, err
	}
	return &Answer{
		data: data.Purchase(p, before), page: func(pictures ...page.Block) *page.Page { return buyPage(p, before, pictures...) },
		glance:   func() *glance.Screen { return glance.Bought(p, before) },
		pictures: []picture{{draw: drawn(figure.Changes, p), mayBeMissing: true}},
	}, nil
}

// buyPage is the page about the question whether another instrument is worth having: what
// is wanted, the verdict, the best route with each, the coarsest balance that would do, what the
// figures rest on, and cautions. Before is the answer for the kit as it is, nil without
// changes: see [comparePage].
func buyPage(p, before *purchase.Purchase, pictures ...page.Block) *page.Page {
	s := words.Bought(p, before)
	return screen(s.Title, s.Opening, s.Result, pictures, s.Footing)
}
