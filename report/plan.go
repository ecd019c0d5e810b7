package report

import (
	"minim/report/page"
	"minim/report/words"
	"minim/uncertainty/plan"
	"minim/uncertainty/route"
)

// Plan is the page of a search: what is wanted, the route that is recommended, the routes
// that no other beats, what each has over it, what would help where none is good enough, what
// was searched, what the figures rest on, and cautions. Before is the search on the kit as it
// is, nil without changes: see [Compare].
func Plan(p, before *plan.Plan, pictures ...page.Figure) *page.Page {
	used := &p.Results[p.Verdict.Use]
	s := screen(p.Prep, before != nil)
	s.Add(words.First(recommended(p))...)
	s.Add(words.Used(p.Comparison, append(words.Facts(p.Comparison), words.PlanFacts(p)...))...)
	s.Add(page.Heading{Text: "The routes that no other beats", Silent: true}, words.PlanTable(p), page.Paragraph{Text: words.Legend, At: 4})
	s.Add(pictured(pictures)...)
	if before != nil {
		s.Add(words.PlanEffect(p, before)...)
	}
	s.Add(lined("What the others have over it", words.PlanReasons(p))...)
	s.Add(lined("What would help", words.Helps(p))...)
	s.Add(lined("Your own routes", words.OwnRoutes(p))...)
	s.Add(page.Gap{}, page.Notes{Label: "Searched", Items: words.Searched(p), At: 13, Join: "\n"})
	s.Add(words.Spoils("What spoils "+used.Route.Name, used.Analytic.Budget))
	s.Add(words.Footing(&p.Notes, words.CautionsOfUse(p.Comparison))...)
	return s
}

// recommended is the comparison of a search with the route that is recommended alone.
func recommended(p *plan.Plan) *route.Comparison {
	c := *p.Comparison
	c.Results, c.Verdict.Use = c.Results[c.Verdict.Use:c.Verdict.Use+1], 0
	return &c
}
