package report

import (
	"strings"

	"minim/uncertainty/rescue"
)

// MadeMarkdown is the screen of a batch as Markdown: see [Made] and [Markdown].
func MadeMarkdown(b *Batch) string {
	m := new(markdown)
	m.heading(b.Prep, false)
	m.line("", "Record: "+recorded(b.Record))
	if text := planFirst(b); text != "" {
		m.line("", "First: "+text)
	}
	m.line("## ", madeWord(b)+": "+b.Record.Made.Name)
	m.facts(withLabels(madeFacts(b)))
	m.entries(b)
	m.named("Still to come: a reading that keeps the batch inside", roomLines(b))
	switch {
	case b.NoWay != nil:
		m.line("## ", "To correct it")
		m.line("", noWayWords(b.NoWay))
	case b.Rescue != nil:
		m.rescue(b.Rescue)
	}
	m.line("## ", "What spoils it")
	m.budget(b.AsMade.Analytic.Budget)
	m.footing(b.comparison(), b.cautions())
	return strings.TrimPrefix(m.String(), "\n")
}

// RescueMarkdown is the screen of the ways to correct a solution as Markdown.
func RescueMarkdown(r *rescue.Rescue) string {
	m := new(markdown)
	m.heading(r.Prep, false)
	m.line("", "There is: "+batchWords(r))
	m.rescue(r)
	m.line("## ", "What spoils it")
	m.budget(r.Results[r.Verdict.Use].Analytic.Budget)
	m.footing(r.Comparison, cautionsOf(r.Comparison))
	return strings.TrimPrefix(m.String(), "\n")
}

// withLabels puts lines without a label of their own to the one above.
func withLabels(list []fact) (joined []fact) {
	for _, f := range list {
		if n := len(joined); f.label == "" && n > 0 {
			joined[n-1].text += "; " + f.text
			continue
		}
		joined = append(joined, f)
	}
	return joined
}

// entries are the lines of the record, with what no longer stands struck through.
func (m *markdown) entries(b *Batch) {
	if len(b.Entries) == 0 {
		return
	}
	m.line("## ", "What was done")
	m.tabular(entryTable(b.Record))
}

// rescue is the way that is recommended, and the table of all.
func (m *markdown) rescue(r *rescue.Rescue) {
	used := &r.Results[r.Verdict.Use]
	m.line("## ", rescueWord(r)+": "+used.Route.Name)
	m.steps(shownFrom(r)+1, wayInstructions(r, r.Verdict.Use))
	m.facts(rescueFacts(r))
	if len(r.Results) > 1 {
		m.grid(wayRows(r, 200))
		m.line("", wayLegend(r))
	}
}
