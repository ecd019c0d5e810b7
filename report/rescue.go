package report

import (
	"minim/report/page"
	"minim/report/words"
	"minim/uncertainty/rescue"
)

// Rescue is the page of the ways to correct a solution at hand: what is wanted, what there
// is, the way that is recommended, the others, what the figures rest on, and cautions.
func Rescue(r *rescue.Rescue, pictures ...page.Figure) *page.Page {
	s := screen(r.Prep, false)
	s.Add(words.Corrected(r)...)
	s.Add(pictured(pictures)...)
	s.Add(words.Spoils("What spoils it", r.Results[r.Verdict.Use].Analytic.Budget))
	s.Add(words.Footing(&r.Notes, words.CautionsOfUse(r.Comparison))...)
	return s
}
