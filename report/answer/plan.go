package answer

import (
	"context"

	"minim/report/data"
	"minim/report/figure"
	"minim/report/page"
	"minim/report/words"
	"minim/report/words/glance"
	"minim/uncertainty/plan"
	"minim/uncertainty/route"
)

var _ = answers("plan", search, "routes", "spread", "vessels", "result")

func search(ctx context.Context, q *Question) (*Answer, error) {
	q.Search.Settings = q.Settings
	p, before, err := both(q, func(p *route.Prep) (*plan.Plan, error) { return plan.Search(ctx, p, q.Search) })
	if err != nil {
		return nil, err
	}
	return &Answer{
		Comparison: p.Comparison, data: data.Plan(p, before),
		page:     func(pictures ...page.Block) *page.Page { return planPage(p, before, pictures...) },
		glance:   func() *glance.Screen { return glance.Planned(p, before) },
		pictures: []picture{{draw: drawn(figure.Trade, p), mayBeMissing: true}, {draw: drawn(figure.Spread, p.Comparison)}, {draw: used(p.Comparison, figure.RowOf)}, {draw: used(p.Comparison, figure.OneResult)}},
	}, nil
}

// planPage is the page of a search: what is wanted, the route that is recommended, the best with each
// number of measurements, the steps of the three best, what more of them buy, what would help where none is good enough, what
// was searched, what the figures rest on, and cautions. Before is the search on the kit as it
// is, nil without changes: see [comparePage].
func planPage(p, before *plan.Plan, pictures ...page.Block) *page.Page {
	s := words.Planned(p, before)
	return screen(s.Title, s.Opening, s.Result, s.Routes, pictures, glance.StepsOfBest(p), s.Reasons, s.Spoils, s.Footing)
}
