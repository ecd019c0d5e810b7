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
	s.Add(words.MadeIs(b)...)
	s.Add(pictured(pictures)...)
	s.Add(words.DoneAndToCome(b)...)
	s.Add(words.Spoils("What spoils it", b.AsMade.Analytic.Budget))
	s.Add(words.Footing(&b.AsMade.Notes, b.Cautions())...)
	return s
}
