package report

import (
	"slices"

	"minim/report/page"
	"minim/report/words"
)

// Report is a section for a treatment report: what was to be made and why so, by which
// route, the result with its uncertainty, and what it rests on.
func Report(p *words.Paper) *page.Page {
	t := p.Treatment()
	figure, figureLast := t.Figure, []page.Block(nil)
	if p.Batch == nil {
		figure, figureLast = nil, t.Figure
	}
	return &page.Page{Title: t.Title, Kind: "report", Blocks: slices.Concat(t.Opening, t.Outcome, figure, t.Recorded, t.Alternatives, figureLast, t.Basis, t.Closing)}
}
