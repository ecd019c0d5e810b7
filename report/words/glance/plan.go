package glance

import (
	"slices"

	"minim/report/page"
	"minim/report/words"
	"minim/report/words/clause"
	"minim/report/words/verb"
	"minim/uncertainty/plan"
	"minim/uncertainty/route"
)

// Planned is the screen of a search; before is that on the kit as it is, nil without changes.
func Planned(p, before *plan.Plan) *Screen {
	c, used := p.Comparison, &p.Results[p.Verdict.Use]
	s := opened(p.Prep)
	s.firstOf(c)
	s.answer(c, used, words.VerdictWord(c), words.RowLetter(p.Verdict.Use)+", "+name(p, p.Verdict.Use))
	s.steps = words.Instructions(p.Prep, used.Route)
	s.given(c, used)
	if before != nil {
		s.add("Change", words.ChangeVerdict(c, before.Comparison))
	}
	for _, f := range words.OwnFirst(p) {
		s.add(f.Label, f.Text)
	}
	for _, f := range words.HelpLines(p) {
		s.helps = append(s.helps, fact{Label: "Helps", Text: f.Label + " " + f.Text})
	}
	s.found(p)
	s.hidden = []count{{len(p.Own), "own routes"}, {len(used.Ladder), "rungs"}}
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
		row.Cells = append([]string{name(p, i)}, cells(p.Comparison, i, []string{insideCell(p.Prep, r), volume(r.LeftOverML)})...)
		s.table.Rows = append(s.table.Rows, row)
	}
	s.order = preferred(p.Comparison)
	for _, i := range best(p)[1:] {
		if r := &p.Results[i]; r.Possible && p.Options.From == "" {
			s.others = append(s.others, fact{Label: "Steps " + words.RowLetter(i), Text: r.Route.Name})
		}
	}
}

// name is what a route is called, which is that of the prep where its readings alone were searched.
func name(p *plan.Plan, i int) string {
	r := &p.Results[i]
	if p.Options.From != "" {
		return r.Route.Name
	}
	other := slices.ContainsFunc(p.Results, func(o route.Result) bool { return from(&o) != from(r) })
	return short(r) + clause.When(other, from(r))
}

// from is " of bleach" where a route starts with that.
func from(r *route.Result) string {
	if s := r.Route.Steps[0].Stock; s != nil {
		return " of " + s.Name
	}
	return ""
}

// short is the name of a route that was found, for a screen: "one dilution, 0.080 g".
func short(r *route.Result) string {
	name := "direct"
	if n := r.Dilutions; n == 1 {
		name = "one dilution"
	} else if n > 1 {
		name = clause.Count(n, "dilution")
		if n < len(numbers) {
			name = numbers[n] + " dilutions"
		}
	}
	steps := r.Route.Steps
	for i := range steps {
		if s := &steps[i]; s.Amount > 0 && (s.Balance != nil || s.Measure != nil) {
			return name + ", " + verb.Amount(s)
		}
	}
	return name
}

var numbers = []string{"no", "one", "two", "three", "four", "five"}

// mostBest is of how many routes the steps are shown.
const mostBest = 3

// best are the places of the routes whose steps are shown, the one to use first.
func best(p *plan.Plan) []int {
	order := preferred(p.Comparison)
	return order[:min(mostBest, len(order))]
}

// StepsOfBest are the steps of the best routes that were found beside the one to use, behind the letters by
// which the table has them.
func StepsOfBest(p *plan.Plan) (list []page.Block) {
	for _, i := range best(p)[1:] {
		r := &p.Results[i]
		if steps := words.Instructions(p.Prep, r.Route); r.Possible && len(steps) > 0 {
			list = append(list, page.Heading{Text: words.RowLetter(i) + ": " + name(p, i)}, page.Steps{Items: steps})
		}
	}
	return list
}
