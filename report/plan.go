package report

import (
	"minim/report/page"
	"minim/report/words"
	"minim/uncertainty/plan"
)

// Plan is the page of a search: what is wanted, the route that is recommended, the routes
// that no other beats, what each has over it, what would help where none is good enough, what
// was searched, what the figures rest on, and cautions. Before is the search on the kit as it
// is, nil without changes: see [Compare].
func Plan(p, before *plan.Plan, pictures ...page.Figure) *page.Page {
	s := words.Planned(p, before)
	return screen(s, s.Result, s.Routes, pictured(pictures), s.Reasons, s.Spoils, s.Footing)
}
