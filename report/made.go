package report

import (
	"minim/report/page"
	"minim/report/words"
)

// Made is the page of a batch: what was wanted, whether the batch is that, what was done,
// what makes it differ from the plan, how far off the readings still to come may be, how it
// can be corrected, what the figures rest on, and cautions.
func Made(b *words.Batch, pictures ...page.Figure) *page.Page {
	s := b.Screen()
	return screen(s, s.Result, pictured(pictures), s.Rest, s.Spoils, s.Footing)
}
