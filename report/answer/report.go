package answer

import (
	"context"
	"slices"

	"minim/report/figure"
	"minim/report/page"
	"minim/report/words"
)

var _ = answers("report", treatment, "spread")

func treatment(ctx context.Context, q *Question) (*Answer, error) {
	p, err := paper(ctx, q, true)
	if err != nil {
		return nil, err
	}
	a := onPaper(p, nil)
	a.page = func(pictures ...page.Block) *page.Page {
		p.PictureFile, p.Picture = a.PictureFile, nil
		if len(pictures) > 0 {
			spread := pictures[0].(page.Figure)
			p.Picture, p.Alt = spread.PNG, spread.Alt
		}
		return reportPage(p)
	}
	a.pictures = []picture{{draw: drawn(figure.Spread, p.Comparison)}}
	if p.Batch != nil {
		a.pictures[0].draw = drawn(figure.Batch, p.Batch)
	}
	return a, nil
}

// reportPage is a section for a treatment report: the result with its uncertainty and the method to
// be quoted, what was to be made and why so, by which route, and what the result rests on.
func reportPage(p *words.Paper) *page.Page {
	t := p.Treatment()
	figure, figureLast := t.Figure, []page.Block(nil)
	if p.Batch == nil {
		figure, figureLast = nil, t.Figure
	}
	return &page.Page{Title: t.Title, Kind: "report", Blocks: slices.Concat(t.Outcome, t.Wanted, t.Uncertain, figure, t.Recorded, t.Alternatives, figureLast, t.Basis, t.Closing)}
}
