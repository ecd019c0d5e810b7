package report

import (
	"strings"

	"minim/uncertainty/plan"
)

// PurchaseMarkdown is the first screen about another instrument as Markdown: see
// [Purchase] and [Markdown].
func PurchaseMarkdown(p, before *plan.Purchase) string {
	m := new(markdown)
	m.heading(p.Prep, before != nil)
	m.facts(verdictFacts(p, before))
	m.line("## ", "What each allows")
	m.grid(choiceRows(p, 200))
	m.named("The best routes", choiceRoutes(p))
	if before != nil {
		m.line("## ", "On the kit as it is")
		m.grid(choiceRows(before, 200))
	}
	if rows := breakEvenRows(p); len(rows) > 2 {
		m.line("## ", breakEvenTitle(p))
		m.grid(rows)
		m.line("", breakEvenWords(p))
	}
	if text := directWords(p); text != "" {
		m.line("", "Directly: "+text)
	}
	for _, text := range purchaseNotSearched(p) {
		m.line("", "Not searched: "+text)
	}
	for _, g := range purchaseGrounds(p) {
		m.line("## ", g.label)
		m.list(g.list)
	}
	m.line("## ", "Cautions")
	m.list(Cautions(p.Prep, bestOf(p)))
	return strings.TrimPrefix(m.String(), "\n")
}
