package answer

import (
	"context"
	"slices"

	"minim/report/figure"
	"minim/report/page"
	"minim/report/words"
)

var _ = answers("report", treatment, "spread", "result", "vessels")

func treatment(ctx context.Context, q *Question) (*Answer, error) {
	p, err := paper(ctx, q, true)
	if err != nil {
		return nil, err
	}
	a := onPaper(p, nil)
	a.page = func(pictures ...page.Block) *page.Page {
		p.Picture, p.PictureFile = nil, ""
		if len(pictures) > 0 {
			spread := pictures[0].(page.Figure)
			p.Picture, p.Alt, p.PictureFile = spread.PNG, spread.Alt, spread.File
		}
		return reportPage(p, pictures...)
	}
	a.pictures = []picture{{draw: drawn(figure.Spread, p.Comparison)}, {draw: ofPaper(p, figure.OneResult)}, {draw: ofPaper(p, figure.RowOf)}}
	if p.Batch != nil {
		a.pictures[0].draw = drawn(figure.Batch, p.Batch)
	}
	return a, nil
}

// reportPage is a section for a treatment report: the result with its uncertainty and the method to
// be quoted, what was to be made and why so, by which route, and what the result rests on.
// The pictures are the spread, the result and the row of vessels.
func reportPage(p *words.Paper, pictures ...page.Block) *page.Page {
	t := p.Treatment()
	if len(pictures) == 3 {
		t.Outcome, t.Wanted = underTitle(t.Outcome, pictures[1]), append(t.Wanted, pictures[2])
	}
	figure, figureLast := t.Figure, []page.Block(nil)
	if p.Batch == nil {
		figure, figureLast = nil, t.Figure
	}
	return &page.Page{Title: t.Title, Kind: "report", Blocks: slices.Concat(t.Outcome, t.Wanted, t.Uncertain, figure, t.Recorded, t.Alternatives, figureLast, t.Basis, t.Closing)}
}
