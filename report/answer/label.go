package answer

import (
	"context"

	"minim/report/page"
	"minim/report/words"
)

var _ = answers("label", label)

func label(ctx context.Context, q *Question) (*Answer, error) {
	p, err := paper(ctx, q, false)
	if err != nil {
		return nil, err
	}
	l := q.Label
	if p.Batch != nil {
		l = l.Of(p.Batch)
	}
	a := onPaper(p, func() *page.Page { return labelPage(p, l) })
	if p.Verdict.Use < 0 {
		return a, nil
	}
	return a, labelPage(p, l).Refused()
}

// labelPage has the labels of all bottles that the sheet tells one to fill, to be cut out, in the
// order of the steps: one each of the solutions on the way, and of the solution wanted as many
// as are asked for.
func labelPage(p *words.Paper, l words.Label) *page.Page {
	title, blocks := p.Labels(l)
	return &page.Page{Title: title, Kind: "labels-page", Blocks: blocks}
}
