package glance

import (
	"strings"

	"minim/equipment"
	"minim/report/page"
	"minim/report/words"
	"minim/report/words/clause"
	"minim/uncertainty/purchase"
)

// Bought is the screen of the question what to buy; before is that on the kit as it is, nil without
// changes.
func Bought(p, before *purchase.Purchase) *Screen {
	s := opened(p.Prep)
	s.verdict = fact{Label: "VERDICT", Text: words.ShortVerdict(p, p.Verdict)}
	if before != nil {
		s.add("Before", words.ShortVerdict(before, before.Verdict))
	}
	if names := words.CutShort(p); len(names) > 0 {
		s.add("Mind", "the search was cut short with the "+strings.Join(names, ", the ")+": a better route may exist")
	}
	if _, doubled, halved := words.Verdicts(p); doubled != "" {
		s.add("Assumed", "with all that is assumed "+clause.Either(doubled == halved, "doubled or halved: "+s.same(doubled), "doubled: "+s.same(doubled)+"; halved: "+s.same(halved)))
	}
	s.choices(p)
	best := words.BestOf(p)
	s.hidden = []count{{len(p.BreakEven), "coarsest balances"}, {len(p.NotSearched), "not searched"}}
	notes := new(equipment.Notes)
	if best != nil {
		notes = &best.Notes
	}
	s.minds(notes)
	s.rests(notes)
	s.hazards = words.CautionsInShort(p.Prep, words.WithoutLadder(best), nil)
	return s
}

// same is a verdict, or that it is the one above.
func (s *Screen) same(verdict string) string {
	return clause.Either(verdict == s.verdict.Text, "the same", verdict)
}

// choices are a table of the benches that could be had.
func (s *Screen) choices(p *purchase.Purchase) {
	s.rowName = "bench"
	s.table = &page.Table{Head: []string{"with (+: not owned)", insideHead(p.Prep), "left over", "price", "best route"}, Numbers: 1, WordsLast: true, Indent: 4, Most: 24, Least: 12}
	for i := range p.Choices {
		s.table.Rows = append(s.table.Rows, choice(p, i))
		s.order = append(s.order, i)
	}
	s.table.DropEmpty(3)
	for _, at := range []int{p.Verdict.Buy, p.Verdict.Present} {
		if at >= 0 {
			s.order = append([]int{at}, s.order...)
		}
	}
}

func choice(p *purchase.Purchase, i int) page.Row {
	o := &p.Choices[i]
	price := clause.When(o.Price.Stated(), o.Price.String())
	row := page.Row{Lead: words.RowLetter(i) + clause.Either(o.Owned, "  ", " +"), Marked: i == p.Verdict.Present || i == p.Verdict.Buy}
	row.Cells = []string{o.Name, clause.Either(o.CutShort, "cut short", "no route"), "", price, ""}
	if o.Found {
		row.Cells = []string{o.Name, insideCell(p.Prep, &o.Best), volume(o.Best.LeftOverML), price, o.Best.Route.Name}
	}
	return row
}
