package answer

import (
	"context"

	"minim/report/data"
	"minim/report/figure"
	"minim/report/page"
	"minim/report/words"
	"minim/report/words/glance"
	"minim/uncertainty/rescue"
	"minim/uncertainty/route"
)

var _ = answers("rescue", correct, "rescue")

func correct(ctx context.Context, q *Question) (*Answer, error) {
	bottle := &route.Route{Name: q.Bottle.Name, Steps: []route.Step{{Verb: route.Start, Stock: q.Bottle}}}
	r, err := rescue.Find(ctx, q.Prep, bottle, q.Settings)
	if err != nil {
		return nil, err
	}
	return &Answer{
		Comparison: r.Comparison, data: data.Rescue(r), page: func(pictures ...page.Block) *page.Page { return rescuePage(r, pictures...) },
		glance:   func() *glance.Screen { return glance.Rescued(r) },
		pictures: []picture{{draw: drawn(figure.Ways, r)}},
	}, nil
}

// rescuePage is the page of the ways to correct a solution at hand: what is wanted, what there
// is, the way that is recommended, the others, what the figures rest on, and cautions.
func rescuePage(r *rescue.Rescue, pictures ...page.Block) *page.Page {
	s := words.Rescued(r)
	return screen(s.Title, s.Opening, s.Result, pictures, s.Spoils, s.Footing)
}
