package report

import (
	"strings"

	"minim/uncertainty/plan"
)

// PlanMarkdown is the first screen of a search as Markdown: see [Plan] and
// [Markdown].
func PlanMarkdown(p, before *plan.Plan) string {
	used := &p.Results[p.Verdict.Use]
	m := new(markdown)
	m.heading(p.Prep, before != nil)
	m.first(recommended(p))
	m.line("## ", verdictWord(p.Comparison)+": "+used.Route.Name)
	m.steps(1, Instructions(p.Prep, used.Route))
	m.facts(append(facts(p.Comparison), planFacts(p)...))
	m.line("## ", "The routes that no other beats")
	m.grid(planRows(p, 200))
	m.line("", legend)
	if before != nil {
		e := effect{p.Comparison, before.Comparison}
		m.line("## ", e.title())
		m.grid(planEffectRows(p, before, 200))
	}
	m.named("What the others have over it", planReasons(p))
	m.named("What would help", helpLines(p))
	m.named("Your own routes", ownRoutes(p))
	m.line("## ", "Searched")
	m.list(append([]string{searched(p)}, notSearched(p)...))
	m.line("## ", "What spoils "+used.Route.Name)
	m.budget(used.Analytic.Budget)
	m.footing(p.Comparison, cautionsOf(p.Comparison))
	return strings.TrimPrefix(m.String(), "\n")
}

// grid is a table whose first two rows are its head.
func (m *markdown) grid(rows [][]string) {
	names := make([]string, len(rows[0]))
	for i := range names {
		names[i] = strings.TrimSpace(rows[0][i] + " " + strings.TrimSpace(rows[1][i]))
	}
	m.head(names, 1)
	for _, row := range rows[2:] {
		cells := make([]string, len(names))
		for i, cell := range row {
			cells[i] = escape(strings.TrimSpace(cell))
		}
		m.row(cells)
	}
}

// named is a section of lines with labels, or nothing where there are none.
func (m *markdown) named(title string, lines []fact) {
	if len(lines) == 0 {
		return
	}
	m.line("## ", title)
	m.WriteString("\n")
	for _, l := range lines {
		m.WriteString("- **" + escape(l.Label) + "** " + escape(l.Text) + "\n")
	}
}
