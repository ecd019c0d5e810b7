package report

import (
	"minim/report/page"
	"minim/report/words"
	"minim/uncertainty/record"
)

// Sheet is a page to work from: what is needed, cautions, the steps with what
// to take care of at each, boxes for what was really read, by whom and when, and what
// comes of it. Room says how far off each reading may be; it may be empty.
func Sheet(p *words.Paper, room []record.Room) *page.Page {
	title, blocks := p.Sheet(room)
	return &page.Page{Title: title, Kind: "sheet", Blocks: blocks}
}
