package report

import (
	"minim/report/page"
	"minim/report/words/kits"
)

// Classes is the page of the class tables: a table for each kind of instrument and each
// standard, in the order of the rows, with the sources of each table below it; and of what may
// not meet.
func Classes(t *kits.Tables, _ ...page.Figure) *page.Page {
	const title = "Class tables"
	head := page.Only{Blocks: []page.Block{page.Title{Text: title}}}
	return &page.Page{Title: title, Kind: "screen", Blocks: append([]page.Block{head}, kits.ClassBlocks(t)...)}
}
