package report

import (
	"strings"

	"minim/report/page"
	"minim/report/words"
	"minim/uncertainty/record"
)

// Sheet is a page to work from: what is needed, cautions, the steps with what
// to take care of at each, boxes for what was really read, by whom and when, and what
// comes of it. Room says how far off each reading may be; it may be empty.
func Sheet(p *words.Paper, room []record.Room) *page.Page {
	d := &page.Page{Title: "Bench sheet: " + p.Subject(), Kind: "sheet"}
	d.Add(stopBars(p.Prep)...)
	p.Headed(d, page.Title{Text: "Bench sheet: " + p.Subject(), Below: p.SheetBelow()})
	p.AimsElsewhere(d)
	d.Add(&page.Table{Head: []string{"this batch", "date", "by", "bench at start, °C", "start", "end"}, Numbers: 6, Class: "form", Rows: page.Rows([][]string{{"", p.Date, "", "", "", ""}})})
	p.Mind(d)
	d.Section("Before step 1", page.Paragraph{Text: strings.Join(p.Cautions(), " ") + " Read the safety data sheets of all that is used; wear gloves and goggles."})
	d.Section("You need", page.Facts{List: p.Needs()})
	d.Section("Steps", p.StepTable(room))
	d.Add(&page.Table{Head: []string{"what was spoilt, and why; other remarks", "checked by"}, Numbers: 2, Class: "form remarks", Rows: page.Rows([][]string{{"", ""}})})
	d.Section("All along", page.Bullets{Items: p.Habits(room)})
	d.Section("You get", page.Paragraph{Text: p.Gives()})
	return d
}
