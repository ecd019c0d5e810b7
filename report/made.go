package report

import (
	"minim/report/page"
	"minim/report/words"
)

// Made is the page of a batch: what was wanted, whether the batch is that, what was done,
// what makes it differ from the plan, how far off the readings still to come may be, how it
// can be corrected, what the figures rest on, and cautions.
func Made(b *words.Batch, pictures ...page.Figure) *page.Page {
	s := screen(b.Prep, false)
	s.Add(page.Paragraph{Label: "Record", Text: words.Recorded(b.Record)})
	if text := words.PlanFirst(b); text != "" {
		s.Add(page.Paragraph{Label: "First", Text: text, At: 8})
	}
	s.Add(page.Heading{Label: words.MadeWord(b), Text: b.Made.Made.Name}, page.Facts{List: words.MadeFacts(b), At: 14, Indent: 2})
	s.Add(pictured(pictures)...)
	if len(b.Entries) > 0 {
		s.Add(page.Heading{Text: "What was done"}, page.TextOnly(page.Facts{List: words.EntryLines(b.Record), Indent: 2}), page.NotText(words.EntryTable(b.Record)))
	}
	s.Add(lined("Still to come: a reading that keeps the batch inside", words.RoomLines(b))...)
	switch {
	case b.NoWay != nil:
		s.Add(page.Gap{}, page.Paragraph{Label: "To correct it", Text: words.NoWayWords(b.NoWay)})
	case b.Rescue != nil:
		s.Add(words.Corrections(b.Rescue)...)
	}
	s.Add(words.Spoils("What spoils it", b.AsMade.Analytic.Budget))
	s.Add(words.Footing(&b.AsMade.Notes, b.Cautions())...)
	return s
}
