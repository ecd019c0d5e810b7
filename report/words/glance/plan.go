package glance

import (
	"minim/report/page"
	"minim/report/words"
	"minim/report/words/clause"
	"minim/uncertainty/plan"
	"minim/uncertainty/route"
)

// Planned is the screen of a search; before is that on the kit as it is, nil without changes.
func Planned(p, before *plan.Plan) *Screen {
	c, used := p.Comparison, &p.Results[p.Verdict.Use]
	s := opened(p.Prep)
	s.firstOf(c)
	s.answer(c, words.VerdictWord(c))
	s.steps = words.Instructions(p.Prep, used.Route)
	s.given(c, used)
	if before != nil {
		s.add("Change", words.ChangeVerdict(c, before.Comparison))
	}
	for _, f := range words.OwnFirst(p) {
		s.add(f.Label, f.Text)
	}
	for _, f := range words.HelpLines(p) {
		s.add("Helps", f.Label+" "+f.Text)
	}
	s.found(p)
	s.hidden = []count{{len(p.Own), "routes of your own"}, {len(used.Ladder), "rungs"}}
	if p.CutShort {
		s.add("Mind", "the search was cut short: a better route may exist")
	}
	s.rests(&p.Notes)
	s.hazards = words.CautionsInShort(p.Prep, words.WithoutLadder(used), nil)
	return s
}

// found is a table of the best routes by their measurements.
func (s *Screen) found(p *plan.Plan) {
	s.rowName = "route"
	s.table = &page.Table{Head: []string{"route", insideHead(p.Prep), "left over", "why not"}, Numbers: 1, WordsLast: true, Indent: 4, Most: 30, Least: 12}
	for i := range p.Results {
		r := &p.Results[i]
		row := page.Row{Lead: words.RowLetter(i) + "  ", Marked: i == p.Verdict.Use}
		row.Cells = append([]string{short(r)}, cells(p.Comparison, i, []string{insideCell(p.Prep, r), volume(r.LeftOverML)})...)
		s.table.Rows = append(s.table.Rows, row)
	}
	s.order = preferred(p.Comparison)
}

// short is the name of a route that was found, for a screen: "one dilution, 0.080 g".
func short(r *route.Result) string { return clause.Either(r.Route.Name == "", "", r.Route.Name) }
