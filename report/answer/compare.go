package answer

import (
	"context"

	"minim/report/data"
	"minim/report/figure"
	"minim/report/page"
	"minim/report/words"
	"minim/uncertainty/route"
)

var _ = answers("compare", compare, "spread", "budget")

func compare(ctx context.Context, q *Question) (*Answer, error) {
	c, before, err := both(q, func(p *route.Prep) (*route.Comparison, error) { return route.Compare(ctx, p, q.Route, q.Settings) })
	if err != nil {
		return nil, err
	}
	return &Answer{
		Comparison: c, data: data.Comparison(c, before),
		page:     func(pictures ...page.Block) *page.Page { return comparePage(c, before, pictures...) },
		pictures: []picture{{draw: drawn(figure.Spread, c)}, {draw: drawn(figure.Budget, c)}},
	}, nil
}

// comparePage is the page of a comparison: what is wanted, which route to use, all routes, why
// the others are not used, what the figures rest on, and cautions. When before is not nil, c is
// the comparison on a changed kit, and before that on the kit as it is; the page then says what
// the change does. HTML holds the pictures.
func comparePage(c, before *route.Comparison, pictures ...page.Block) *page.Page {
	used := &c.Results[c.Verdict.Use]
	p := screen(c.Prep, before != nil)
	p.Add(words.Recommended(c)...)
	p.Add(words.Routes(c)...)
	p.Add(pictures...)
	if before != nil {
		p.Add(words.WhatChanged(c, before)...)
	}
	p.Add(words.Ladder(c)...)
	p.Add(words.Spoils(used.Route.Name, used.Analytic.Budget))
	p.Add(words.WhyNotOthers(c)...)
	p.Add(words.Footing(&c.Notes, words.CautionsOfUse(c))...)
	return p
}
