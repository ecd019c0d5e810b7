package answer

import (
	"context"

	"minim/equipment"
	"minim/report/data"
	"minim/report/page"
	"minim/report/words/kits"
)

var _ = answers("kit", func(_ context.Context, q *Question) (*Answer, error) {
	return &Answer{data: data.Kit(q.Kit), page: func(...page.Figure) *page.Page { return kitPage(q.Kit) }}, nil
})

// kitPage is the page of a kit: its instruments, and its candidates apart, how good each is,
// where that figure comes from, the least it measures to 10 % and to 5 %, and its price where
// one is stated.
func kitPage(k *equipment.Kit) *page.Page {
	title, blocks := kits.Kit(k)
	return &page.Page{Title: title, Kind: "screen", Blocks: blocks}
}
