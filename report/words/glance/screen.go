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
	order       []int       // rows of the table, those that are shown first at the front
	others      []page.Fact // steps of other routes
	helps       []page.Fact // what would help, the best first
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

// room is how much is shown of what there may be too much of.
type room struct{ rows, steps, others, helps int }

// Text is the screen in lines of so many characters. Next is what to type next, "" for nothing.
func (s *Screen) Text(width int, next string) string {
	return s.text(width, s.fit(max(width, Columns), next), next)
}

// fit says how much there is room for.
func (s *Screen) fit(width int, next string) room {
	most := room{mostRows, len(s.steps), len(s.others), len(s.helps)}
	if most.steps > mostSteps {
		most.steps = mostSteps - 1
	}
	if s.table != nil {
		most.rows = min(most.rows, len(s.table.Rows))
	}
	for _, least := range []room{{2, mostSteps, 0, 2}, {2, 4, 0, 1}, {1, 3, 0, 1}, {0, 1, 0, 1}} {
		for s.lines(width, most, next) > Lines && most.less(least) {
		}
	}
	return most
}

// less shows one thing less, down to what is left at the least, and reports whether there was one.
func (r *room) less(least room) bool {
	for _, of := range []struct {
		n     *int
		least int
	}{{&r.others, least.others}, {&r.helps, least.helps}, {&r.rows, least.rows}, {&r.steps, least.steps}} {
		if *of.n > of.least {
			*of.n--
			return true
		}
	}
	return false
}

func (s *Screen) lines(width int, r room, next string) int {
	return strings.Count(s.text(width, r, next), "\n")
}

func (s *Screen) text(width int, r room, next string) string {
	list := s.blocks(r)
	if next != "" {
		list = append(list, line("Next", next))
	}
	return (&page.Page{Blocks: append(list, s.answers(""))}).Text(width)
}

// answers is the verdict, with a doubt behind it; further lines hang behind its first word.
func (s *Screen) answers(doubt string) page.Block {
	return hanging(s.verdict.Label, s.verdict.Text+doubt)
}

// hanging is a text behind its label, of which the first word stands out.
func hanging(label, text string) page.Block {
	word, rest, several := strings.Cut(label, " ")
	return page.Facts{List: []fact{{Label: word, Text: clause.When(several, strings.TrimSuffix(rest, ":")+": ") + text}}}
}

// line is a text behind its label.
func line(label, text string) page.Block { return lines(fact{Label: label, Text: text}) }

func lines(list ...fact) page.Block { return page.Facts{List: list, At: labels, Colon: true} }

func (s *Screen) blocks(r room) []page.Block {
	list := slices.Clone(s.head)
	list = append(list, s.answers(s.doubt), page.Steps{First: s.first, Items: s.steps[:r.steps]})
	if n := len(s.steps) - r.steps; n > 0 {
		list = append(list, page.Paragraph{Text: clause.Count(n, "more step") + ": --all", At: 7})
	}
	list = append(list, lines(slices.Concat(s.facts, s.helps[:r.helps])...))
	if s.table != nil && r.rows > 0 {
		t := *s.table
		t.Rows = s.rows(r.rows)
		list = append(list, &t)
	}
	list = append(append(list, lines(s.others[:r.others]...)), s.below...)
	if text := s.notShown(r); text != "" {
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
func (s *Screen) notShown(r room) string {
	var parts clause.List
	if s.table != nil {
		n := len(s.table.Rows) - min(r.rows, len(s.table.Rows)) + s.moreOfTable
		parts.Add(n > 0, "%s", clause.Count(n, s.rowName))
	}
	for _, c := range append(slices.Clip(s.hidden), count{len(s.helps) - r.helps, "hints"}) {
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
