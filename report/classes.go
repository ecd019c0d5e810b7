package report

import (
	"minim/report/page"
	"minim/report/words"
)

// Classes is the page of the class tables: a table for each kind of instrument and each
// standard, in the order of the rows, with the sources of each table below it; and of what may
// not meet.
func Classes(t *words.Tables, _ ...page.Figure) *page.Page {
	p := &page.Page{Title: "Class tables", Kind: "screen"}
	p.Add(page.NotText(page.Title{Text: p.Title}))
	p.Add(words.ClassTables(t)...)
	return p
}
