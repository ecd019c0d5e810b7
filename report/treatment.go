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
	p.Headed(d, page.Title{Text: p.Subject(), Below: p.Below()})
	p.AimsElsewhere(d)
	d.Section("Purpose", page.Paragraph{Text: p.Purpose()})
	d.Section("What is stated", page.Paragraph{Text: p.Measurand()})
	p.Steps(d)
	d.Section("Result", page.Paragraph{Text: p.Statement()}, p.Inside())
	p.Mind(d)
	p.Budget(d)
	if p.Batch != nil {
		p.Figure(d)
		p.Recorded(d)
	}
	p.Alternatives(d)
	if p.Batch == nil {
		p.Figure(d)
	}
	d.Section("How what is shared was treated", page.Paragraph{Text: p.Correlation()})
	p.TwoWays(d)
	p.Grounds(d)
	p.Instruments(d)
	d.Section("Method, to be quoted", page.Quotation{Text: p.Method()})
	d.Section("Cautions", page.Bullets{Items: p.Cautions()})
	p.ToRepeat(d)
	return d
}
