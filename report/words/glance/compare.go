package glance

import (
	"cmp"
	"slices"
	"strings"

	"minim/report/page"
	"minim/report/words"
	"minim/report/words/clause"
	"minim/uncertainty/route"
)

// Compared is the screen of a comparison; before is that on the kit as it is, nil without changes.
func Compared(c, before *route.Comparison) *Screen {
	s, used := opened(c.Prep), &c.Results[c.Verdict.Use]
	s.firstOf(c)
	s.answer(c, used, words.VerdictWord(c), used.Route.Name)
	s.steps = words.Instructions(c.Prep, used.Route)
	s.given(c, used)
	if before != nil {
		s.add("Change", words.ChangeVerdict(c, before))
	}
	s.routes(c)
	s.hidden = []count{{max(0, len(c.Prep.Tolerances)-1), "tolerances"}, {len(used.Ladder), "rungs"}}
	s.rests(&c.Notes)
	s.hazards = words.CautionsInShort(c.Prep, used, nil)
	return s
}

// firstOf says before everything else that the route to use aims elsewhere; that others do is the reason
// why they are not used.
func (s *Screen) firstOf(c *route.Comparison) {
	used, list := &c.Results[c.Verdict.Use], words.FirstLines(c)
	if used.Elsewhere != nil && len(list) > 0 && strings.HasPrefix(list[0], used.Route.Name+" ") {
		s.say("First", list[0])
	}
}

// answer is the verdict on what goes by a name in a line; what is asked for is said once.
func (s *Screen) answer(c *route.Comparison, r *route.Result, word, name string) {
	text := chance(c.Prep, r, c.Settings.Coverage)
	if strings.Contains(word, asked(c.Prep)+" in 100") {
		text = strings.TrimSuffix(text, askedFor(c.Prep))
	}
	s.verdict = fact{Label: word, Text: name + ": " + text}
	s.doubt = words.CloseCall(c.Prep, r)
}

// routes are a table of the routes that were compared.
func (s *Screen) routes(c *route.Comparison) {
	if len(c.Results) < 2 {
		return
	}
	s.rowName = "route"
	s.table = &page.Table{Head: []string{"route", insideHead(c.Prep), "left over", "why not"}, Numbers: 1, WordsLast: true, Indent: 2, Most: 24, Least: 12}
	for i := range c.Results {
		r := &c.Results[i]
		row := page.Row{Marked: i == c.Verdict.Use, Cells: []string{r.Route.Name}}
		var figures []string
		if r.Possible && r.Informative {
			figures = []string{insideCell(c.Prep, r), volume(r.LeftOverML)}
		}
		row.Cells = append(row.Cells, cells(c, i, figures)...)
		s.table.Rows = append(s.table.Rows, row)
	}
	s.order = preferred(c)
}

// preferred are the results in the order in which they are kept where not all are shown: the one to
// use, what may not be used, those that are possible by their chance, the others.
func preferred(c *route.Comparison) (order []int) {
	for i := range c.Results {
		order = append(order, i)
	}
	slices.SortStableFunc(order, func(a, b int) int {
		x, y := &c.Results[a], &c.Results[b]
		return cmp.Or(
			cmp.Compare(clause.Either(b == c.Verdict.Use, 1, 0), clause.Either(a == c.Verdict.Use, 1, 0)),
			cmp.Compare(level(y), level(x)), cmp.Compare(nearness(y), nearness(x)))
	})
	return order
}

func level(r *route.Result) int {
	switch {
	case r.MayNotBeUsed():
		return 2
	case r.Possible && r.Informative:
		return 1
	}
	return 0
}

// nearness is the greater, the surer a route is.
func nearness(r *route.Result) float64 {
	if len(r.Inside) > 0 {
		return r.Chance()
	}
	return -r.HoldsWithin
}
