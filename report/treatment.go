package report

import (
	"minim/report/page"
	"minim/report/words"
)

// Report is a section for a treatment report: what was to be made and why so, by which
// route, the result with its uncertainty, and what it rests on.
func Report(p *words.Paper) *page.Page {
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
