package report

import (
	"minim/report/page"
	"minim/report/words"
	"minim/uncertainty/rescue"
)

// Rescue is the page of the ways to correct a solution at hand: what is wanted, what there
// is, the way that is recommended, the others, what the figures rest on, and cautions.
func Rescue(r *rescue.Rescue, pictures ...page.Figure) *page.Page {
	s := words.Rescued(r)
	return screen(s, s.Result, pictured(pictures), s.Spoils, s.Footing)
}
