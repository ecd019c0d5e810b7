package answer

import (
	"context"

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

// reportPage is a section for a treatment report: what was to be made and why so, by which
// route, the result with its uncertainty, and what it rests on.
func reportPage(p *words.Paper) *page.Page {
	d := &page.Page{Title: p.Subject(), Kind: "report"}
	d.Add(stopBars(p.Prep)...)
	p.Opening(d)
	p.Outcome(d)
	if p.Batch != nil {
		p.Figure(d)
		p.Recorded(d)
	}
	p.Alternatives(d)
	if p.Batch == nil {
		p.Figure(d)
	}
	p.Basis(d)
	p.Closing(d)
	return d
}
