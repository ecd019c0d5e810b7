package report

import (
	"minim/report/page"
	"minim/report/words"
	"minim/uncertainty/plan"
)

// Purchase is the page about the question whether another instrument is worth having: what
// is wanted, the verdict, the best route with each, the coarsest balance that would do, what the
// figures rest on, and cautions. Before is the answer for the kit as it is, nil without
// changes: see [Compare].
func Purchase(p, before *plan.Purchase, pictures ...page.Figure) *page.Page {
	s := words.Bought(p, before)
	return screen(s, s.Result, pictured(pictures), s.Footing)
}
