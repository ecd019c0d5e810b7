package report

import (
	"minim/report/page"
	"minim/report/words"
)

// Labels are those of all bottles that the sheet tells one to fill, to be cut out, in the
// order of the steps: one each of the solutions on the way, and of the solution wanted as many
// as are asked for.
func Labels(p *words.Paper, l words.Label) *page.Page {
	title, blocks := p.Labels(l)
	return &page.Page{Title: title, Kind: "labels-page", Blocks: blocks}
}
