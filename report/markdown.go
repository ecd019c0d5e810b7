package report

import (
	"fmt"
	"math"
	"strings"

	"minim/uncertainty"
	"minim/uncertainty/route"
)

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
		m.WriteString("- **" + f.Label + ":** " + escape(f.Text) + "\n")
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
		m.row([]string{escape(line.Name), escape(line.Owner), marks(line), escape(u), escape(fineShare(line.Share))})
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

// bold is a text that stands out.
func bold(text string) string { return "**" + escape(strings.TrimSpace(text)) + "**" }
