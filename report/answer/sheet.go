package answer

import (
	"context"

	"minim/report/figure"
	"minim/report/page"
	"minim/report/words"
	"minim/uncertainty/record"
)

var _ = answers("sheet", sheet, "vessels")

func sheet(ctx context.Context, q *Question) (*Answer, error) {
	p, err := paper(ctx, q, false)
	if err != nil {
		return nil, err
	}
	var room []record.Room
	if at := p.Verdict.Use; at >= 0 && p.Prep.GoodEnough(&p.Results[at]) { // else a limit beside a planned reading means nothing
		if room, err = record.PlannedRoom(ctx, p.Prep, &p.Results[at], q.Settings); err != nil {
			return nil, err
		}
	}
	a := onPaper(p, nil)
	a.page = func(pictures ...page.Block) *page.Page { return sheetPage(p, room, pictures...) }
	if p.Verdict.Use >= 0 {
		a.pictures = []picture{{draw: used(p.Comparison, figure.RowOf)}}
	}
	return a, nil
}

// sheetPage is a page to work from: what is needed, cautions, the steps with what
// to take care of at each, boxes for what was really read, by whom and when, and what
// comes of it. Room says how far off each reading may be; it may be empty.
func sheetPage(p *words.Paper, room []record.Room, pictures ...page.Block) *page.Page {
	title, blocks := p.Sheet(room)
	for _, row := range pictures {
		blocks = underTitle(blocks, row)
	}
	return &page.Page{Title: title, Kind: "sheet", Foot: p.SheetFoot(), Blocks: blocks}
}
