package answer

import (
	"minim/report/page"
	"minim/report/words"
	"minim/uncertainty/route"
)

// screen starts the page of a command: what may not meet, what is supposed to be other
// than it is, and what is wanted.
func screen(p *route.Prep, isChanged bool) *page.Page {
	s := &page.Page{Title: words.Title(p), Kind: "screen"}
	if s.Title == "" {
		s.Title = words.Wanted(p)
	}
	var change page.Block = page.Gap{}
	s.Add(stopBars(p)...)
	if isChanged {
		change = page.Paragraph{Label: "Changed", Text: words.Changed(p)}
		s.Add(page.TextOnly(change))
	}
	if mark := words.Invented(p.Kit); mark != "" {
		s.Add(page.Bar{Text: mark})
	}
	if t := words.Title(p); t != "" {
		s.Add(page.Title{Text: t})
	}
	s.Add(page.NotText(change), page.Paragraph{Label: "Wanted", Text: words.WantedWithin(p)})
	return s
}

// stopBars stand above a page.
func stopBars(p *route.Prep) (bars []page.Block) {
	for _, text := range words.Stops(p) {
		bars = append(bars, page.Bar{Text: text}, page.Gap{})
	}
	return bars
}
