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
	a.page = func(pictures ...page.Block) *page.Page { return reportPage(p, pictures...) }
	a.pictures = []picture{{draw: drawn(figure.Spread, p.Comparison)}, {draw: ofPaper(p, figure.OneResult)}, {draw: ofPaper(p, figure.RowOf)}}
	if p.Batch != nil {
		a.pictures[0].draw = drawn(figure.Batch, p.Batch)
	} else if parts, err := figure.SpreadParts(p.Comparison, rowsOnPage); err != nil {
		return nil, err
	} else if len(parts) > 1 {
		a.pictures[0].draw = already(parts[0])
		for _, part := range parts[1:] {
			a.pictures = append(a.pictures, picture{draw: already(part)})
		}
	}
	return a, nil
}

// rowsOnPage is how many routes a figure as wide as a page has at most, so that it is not higher than one.
const rowsOnPage = 9

// already is how a picture is drawn that is laid out.
func already(f *figure.Figure) func() (*figure.Figure, error) {
	return func() (*figure.Figure, error) { return f, nil }
}

// reportPage is a section for a treatment report: the result with its uncertainty and the method to
// be quoted, what was to be made and why so, by which route, and what the result rests on.
// The pictures are the spread, the result, the row of vessels, and more parts of the spread.
func reportPage(p *words.Paper, pictures ...page.Block) *page.Page {
	if p.Spreads = nil; len(pictures) >= 3 {
		for _, spread := range append(pictures[:1:1], pictures[3:]...) {
			p.Spreads = append(p.Spreads, spread.(page.Figure))
		}
	}
	t := p.Treatment()
	if len(pictures) >= 3 {
		t.Outcome, t.Wanted = underTitle(t.Outcome, pictures[1]), append(t.Wanted, pictures[2])
	}
	figure, figureLast := t.Figure, []page.Block(nil)
	if p.Batch == nil {
		figure, figureLast = nil, t.Figure
	}
	return &page.Page{Title: t.Title, Kind: "report", Foot: p.Foot(), Blocks: slices.Concat(t.Outcome, t.Wanted, t.Uncertain, figure, t.Recorded, t.Alternatives, figureLast, t.Basis, t.Closing)}
}
