package answer

import (
	"context"

	"minim/equipment"
	"minim/report/data"
	"minim/report/page"
	"minim/report/words/kits"
)

var _ = answers("kit", func(_ context.Context, q *Question) (*Answer, error) {
	return &Answer{data: data.Kit(q.Kit), page: func(...page.Block) *page.Page { return kitPage(q.Kit) }}, nil
})

// kitPage is the page of a kit: its instruments, and its candidates apart, how good each is,
// where that figure comes from, the least it measures to 10 % and to 5 %, and its price where
// one is stated.
func kitPage(k *equipment.Kit) *page.Page {
	title, blocks := kits.Kit(k)
	return &page.Page{Title: title, Kind: "screen", Blocks: blocks}
}

// classesWidth is how wide the class tables are, in characters, but for a long address.
const classesWidth = 100

var _ = answers("classes", func(context.Context, *Question) (*Answer, error) {
	t := kits.AllTables()
	return &Answer{data: data.Classes(t), page: func(...page.Block) *page.Page { return classesPage(t) }, width: classesWidth}, nil
})

// classesPage is the page of the class tables: a table for each kind of instrument and each
// standard, in the order of the rows, with the sources of each table below it; and of what may
// not meet.
func classesPage(t *kits.Tables) *page.Page {
	const title = "Class tables"
	head := page.Only{Blocks: []page.Block{page.Title{Text: title}}}
	return &page.Page{Title: title, Kind: "screen", Blocks: append([]page.Block{head}, kits.ClassBlocks(t)...)}
}
