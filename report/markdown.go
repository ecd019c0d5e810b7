package report

import (
	"fmt"
	"math"
	"strings"

	"minim/uncertainty"
	"minim/uncertainty/route"
)

// Markdown is the first screen as Markdown, and the budget of the route to use
// in a table. The tables are those of GitHub Flavored Markdown. A name or a note
// of the user stays the text that it is: see [escape]. What before is, [Text] says.
func Markdown(c, before *route.Comparison) string {
	used := &c.Results[c.Verdict.Use]
	m := new(markdown)
	m.heading(c.Prep, before != nil)
	m.first(c)
	m.line("## ", verdictWord(c)+": "+used.Route.Name)
	m.steps(1, Instructions(c.Prep, used.Route))
	m.facts(facts(c))
	m.line("## ", "All routes")
	m.routes(c)
	m.list(alsoInside(c))
	if before != nil {
		m.effect(effect{c, before})
	}
	m.ladder(c)
	m.line("## ", "What spoils "+used.Route.Name)
	m.budget(used.Analytic.Budget)
	m.others(c)
	m.footing(c, cautionsOf(c))
	return strings.TrimPrefix(m.String(), "\n")
}

// footing: what the figures rest on, and cautions.
func (m *markdown) footing(c *route.Comparison, cautions []string) {
	for _, g := range grounds(c) {
		m.line("## ", g.label)
		m.list(g.list)
	}
	m.line("## ", "Cautions")
	m.list(cautions)
}

// heading says what is wanted, and what is changed in the kit, if anything is.
func (m *markdown) heading(p *route.Prep, isChanged bool) {
	m.stops(p)
	if mark := invented(p.Kit); mark != "" {
		m.WriteString("\n" + bold(mark) + "\n")
	}
	if t := title(p); t != "" {
		m.line("# ", t)
	}
	if isChanged {
		m.line("", "Changed: "+changed(p))
	}
	m.line("", "Wanted: "+wanted(p))
}

// first says what comes before everything else.
func (m *markdown) first(c *route.Comparison) {
	for _, line := range firstLines(c) {
		m.line("", "First: "+line)
	}
}

// markdown takes words and escapes every one.
type markdown struct{ strings.Builder }

// line is a heading or, without a mark, a paragraph.
func (m *markdown) line(mark, text string) { m.WriteString("\n" + mark + escape(text) + "\n") }

func (m *markdown) steps(first int, lines []string) {
	m.WriteString("\n")
	for i, line := range lines {
		fmt.Fprintf(m, "%d. %s\n", first+i, escape(line))
	}
}

func (m *markdown) list(items []string) {
	if len(items) == 0 {
		return
	}
	m.WriteString("\n")
	for _, item := range items {
		m.WriteString("- " + escape(item) + "\n")
	}
}

// facts is a list whose labels are bold.
func (m *markdown) facts(list []fact) {
	m.WriteString("\n")
	for _, f := range list {
		m.WriteString("- **" + f.label + ":** " + escape(f.text) + "\n")
	}
}

// others says of each other route why it is not the one to use.
func (m *markdown) others(c *route.Comparison) {
	if len(c.Results) < 2 {
		return
	}
	m.line("## ", "Why not the others")
	m.WriteString("\n")
	for i := range c.Results {
		if r := &c.Results[i]; i != c.Verdict.Use {
			m.WriteString("- **" + escape(r.Route.Name) + ":** " + escape(whyNotHere(c, r)) + "\n")
		}
	}
}

// routes is the table of all routes, the one to use in bold.
func (m *markdown) routes(c *route.Comparison) {
	names, units := tableHead(c)
	for i, unit := range units {
		names[i] = strings.TrimSpace(names[i] + " " + unit)
	}
	m.head(names, 1)
	for i := range c.Results {
		r := &c.Results[i]
		row := make([]string, len(names))
		row[0] = escape(r.Route.Name)
		if i == c.Verdict.Use {
			row[0] = "**" + row[0] + "**"
		}
		for j, cell := range cells(c, r) {
			row[j+1] = escape(cell)
		}
		m.row(row)
	}
}

// ladder is the table of its rungs.
func (m *markdown) ladder(c *route.Comparison) {
	rows := ladderRows(c)
	if len(rows) == 0 {
		return
	}
	m.line("## ", "Ladder")
	m.line("", ladderWords(c))
	m.head(rows[0], 1)
	for _, row := range rows[1:] {
		cells := make([]string, len(rows[0]))
		for i, cell := range row {
			cells[i] = escape(cell)
		}
		m.row(cells)
	}
}

// budget is the table of the influences, the largest first.
func (m *markdown) budget(budget []uncertainty.Contribution) {
	if len(budget) == 0 {
		m.line("", "Nothing that is counted.")
		return
	}
	m.head([]string{"influence", "owner", "marked", "standard uncertainty", "share of the variance"}, 3)
	for i := range budget {
		line := &budget[i]
		u := strings.TrimSpace(twoDigits(line.StandardUncertainty) + " " + line.Unit)
		m.row([]string{escape(line.Name), escape(OwnerWords(line.Owner)), marks(line), escape(u), escape(fineShare(line.Share))})
	}
}

// fineShare prints a share of a variance with two significant digits.
func fineShare(x float64) string {
	if x != 0 && math.Abs(x) < 1e-4 {
		return "under 0.01 %"
	}
	return Percent(x)
}

// marks of a line of the budget: shared by several uses, assumed.
func marks(line *uncertainty.Contribution) string {
	var words []string
	if line.Shared() {
		words = append(words, "shared")
	}
	if line.Assumed {
		words = append(words, "assumed")
	}
	return strings.Join(words, ", ")
}

// head starts a table; columns from the given one on hold numbers.
func (m *markdown) head(names []string, numbers int) {
	m.WriteString("\n")
	rules := make([]string, len(names))
	for i, name := range names {
		names[i], rules[i] = escape(name), "---"
		if i >= numbers {
			rules[i] = "--:"
		}
	}
	m.row(names)
	m.row(rules)
}

// row writes cells that are escaped already.
func (m *markdown) row(cells []string) { m.WriteString("| " + strings.Join(cells, " | ") + " |\n") }
