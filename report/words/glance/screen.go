package glance

import (
	"fmt"
	"slices"
	"strings"

	"minim/report/page"
	"minim/report/words/clause"
)

// Lines of a screen of Columns characters; one that is narrower has the same rows and steps, in more
// lines.
const (
	Lines   = 24
	Columns = 80
)

// The most steps and rows that are shown.
const mostSteps, mostRows = 8, 6

// Screen is what is seen first of a result.
type Screen struct {
	// head is what may not meet, what is supposed, what is wanted.
	head []page.Block
	// verdict is the answer, which the last line repeats; doubt follows it the first time.
	verdict     page.Fact
	doubt       string
	steps       []string
	first       int // number of the first step, 0 for 1
	facts       []page.Fact
	table       *page.Table
	order       []int // rows of the table, those that are shown first at the front
	below       []page.Block
	hidden      []count
	hazards     []string
	rowName     string // what a row is: "route"
	moreOfTable int    // that is in no row at all
}

// count is so many of something that is not shown.
type count struct {
	n    int
	what string // "assumed"; in the plural where it says so
}

// fact is a line with a label.
type fact = page.Fact

// labels stand at one column.
const labels = 10

// Text is the screen in lines of so many characters. Next is what to type next, "" for nothing.
func (s *Screen) Text(width int, next string) string {
	rows, steps := s.fit(max(width, Columns), next)
	return s.text(width, rows, steps, next)
}

// fit says how many rows and steps there is room for.
func (s *Screen) fit(width int, next string) (rows, steps int) {
	steps, rows = len(s.steps), mostRows
	if steps > mostSteps {
		steps = mostSteps - 1
	}
	if s.table != nil {
		rows = min(rows, len(s.table.Rows))
	}
	tooLong := func() bool { return strings.Count(s.text(width, rows, steps, next), "\n") > Lines }
	for _, least := range []struct{ rows, steps int }{{2, mostSteps}, {2, 4}, {1, 3}, {0, 1}} {
		for tooLong() && rows > least.rows {
			rows--
		}
		for tooLong() && steps > least.steps {
			steps = min(steps, len(s.steps)) - 1
		}
	}
	return rows, steps
}

func (s *Screen) text(width, rows, steps int, next string) string {
	list := s.blocks(rows, steps)
	if next != "" {
		list = append(list, line("Next", next))
	}
	return (&page.Page{Blocks: append(list, page.Facts{List: []fact{s.verdict}})}).Text(width)
}

// line is a text behind its label.
func line(label, text string) page.Block {
	return page.Facts{List: []fact{{Label: label, Text: text}}, At: labels, Colon: true}
}

func (s *Screen) blocks(rows, steps int) []page.Block {
	list := slices.Clone(s.head)
	list = append(list, page.Facts{List: []fact{{Label: s.verdict.Label, Text: s.verdict.Text + s.doubt}}})
	list = append(list, page.Steps{First: s.first, Items: s.steps[:steps]})
	if n := len(s.steps) - steps; n > 0 {
		list = append(list, page.Paragraph{Text: clause.Count(n, "more step") + ": --all", At: 7})
	}
	list = append(list, page.Facts{List: s.facts, At: labels, Colon: true})
	if s.table != nil && rows > 0 {
		t := *s.table
		t.Rows = s.rows(rows)
		list = append(list, &t)
	}
	list = append(list, s.below...)
	if text := s.notShown(rows); text != "" {
		list = append(list, line("Not shown", text+": --all"))
	}
	return append(list, line("Cautions", strings.Join(s.hazards, " ")))
}

// rows are those of the table that are shown, in its order.
func (s *Screen) rows(n int) (list []page.Row) {
	shown := s.order[:min(n, len(s.order))]
	for i, row := range s.table.Rows {
		if slices.Contains(shown, i) {
			list = append(list, row)
		}
	}
	return list
}

// notShown counts what is left out: "2 routes, 12 assumed, 3 from memory, 5 not counted".
func (s *Screen) notShown(rows int) string {
	var parts clause.List
	if s.table != nil {
		n := len(s.table.Rows) - min(rows, len(s.table.Rows)) + s.moreOfTable
		parts.Add(n > 0, "%s", clause.Count(n, s.rowName))
	}
	for _, c := range s.hidden {
		parts.Add(c.n > 0, "%s", c.String())
	}
	return strings.Join(parts, ", ")
}

// String is "12 assumed", or "2 rungs".
func (c count) String() string {
	if one, several := strings.CutSuffix(c.what, "s"); several {
		return clause.Count(c.n, one)
	}
	return fmt.Sprint(c.n, " ", c.what)
}
