package answer

import (
	"context"
	"slices"

	"minim/report/data"
	"minim/report/figure"
	"minim/report/page"
	"minim/report/words"
	"minim/report/words/clause"
	"minim/report/words/glance"
	"minim/uncertainty/contest"
	"minim/uncertainty/route"
)

var _ = answers("compare", compare, "spread", "budget", "vessels", "result")

func compare(ctx context.Context, q *Question) (*Answer, error) {
	c, before, err := both(q, func(p *route.Prep) (*route.Comparison, error) { return contest.Compare(ctx, p, q.Route, q.Settings) })
	if err != nil {
		return nil, err
	}
	return &Answer{
		Comparison: c, data: data.Comparison(c, before),
		page:     func(pictures ...page.Block) *page.Page { return comparePage(c, before, pictures...) },
		glance:   func() *glance.Screen { return glance.Compared(c, before) },
		pictures: []picture{{draw: func() (*figure.Figure, error) { return figure.SpreadChanged(c, before) }}, {draw: drawn(budgetOf(q), c)}, {draw: used(c, figure.RowOf)}, {draw: used(c, figure.OneResult)}},
	}, nil
}

// comparePage is the page of a comparison: what is wanted, which route to use, all routes, why
// the others are not used, what the figures rest on, and cautions. When before is not nil, c is
// the comparison on a changed kit, and before that on the kit as it is; the page then says what
// the change does. HTML holds the pictures.
func comparePage(c, before *route.Comparison, pictures ...page.Block) *page.Page {
	s := words.Compared(c, before)
	return screen(s.Title, s.Opening, s.Result, s.Routes, pictures, s.Changes, s.Ladder, s.Spoils, s.Reasons, s.Footing)
}

// screen is the page of a command.
func screen(title string, parts ...[]page.Block) *page.Page {
	return &page.Page{Title: title, Kind: "screen", Blocks: slices.Concat(parts...)}
}

// used is how a picture of the route to use is drawn.
func used(c *route.Comparison, draw func(*route.Comparison, *route.Result) (*figure.Figure, error)) func() (*figure.Figure, error) {
	return func() (*figure.Figure, error) { return draw(c, &c.Results[c.Verdict.Use]) }
}

// budgetOf draws the budget of the route to use, or of all where all is asked for.
func budgetOf(q *Question) func(*route.Comparison) (*figure.Figure, error) {
	return clause.Either(q.All, figure.Budgets, figure.Budget)
}
