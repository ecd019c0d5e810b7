package report

import (
	"minim/report/page"
	"minim/report/words/kits"
)

// Classes is the page of the class tables: a table for each kind of instrument and each
// standard, in the order of the rows, with the sources of each table below it; and of what may
// not meet.
func Classes(t *kits.Tables, _ ...page.Figure) *page.Page {
	p := &page.Page{Title: "Class tables", Kind: "screen"}
	p.Add(page.NotText(page.Title{Text: p.Title}))
	p.Add(kits.ClassBlocks(t)...)
	return p
}
