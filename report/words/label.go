package words

import (
	"cmp"
	"fmt"
	"strings"

	"minim/equipment/quantity"
	"minim/report/page"
	"minim/report/words/clause"
	"minim/report/words/reminder"
	"minim/uncertainty/route"
)

// Label is what stands on the bottles of a route beside what the route says of them.
type Label struct {
	// Count of labels of the solution wanted.
	Count int
	// By whom, the Batch, and until when it may be used; each may be empty.
	By, Batch, UseBy string
}

// Of is the label with what the record of a batch says, where that is not stated.
func (l Label) Of(b *Batch) Label {
	if l.By == "" {
		l.By = strings.Join(makers(b.Record), ", ")
	}
	l.Batch = cmp.Or(l.Batch, b.Record.Batch)
	return l
}

// Labels are a page with a label for each bottle that is filled.
func (p *Paper) Labels(l Label) (title string, blocks []page.Block) {
	return "Labels: " + p.subject(), append(stopBars(p.Prep), p.labels(l))
}

func (p *Paper) labels(l Label) (sheet page.Labels) {
	all := handled(p.prep(), p.result())
	for i := range all {
		h := &all[i]
		if h.Bottle == 0 {
			continue
		}
		count := 1
		if h.Last {
			count = l.Count
		}
		sheet.List = append(sheet.List, page.Label{Count: count, Lines: p.label(h, all, l)})
	}
	return sheet
}

// label is that of one bottle.
func (p *Paper) label(h *route.Handled, all []route.Handled, l Label) (lines []page.Paragraph) {
	add := func(size string, texts ...string) {
		for _, text := range texts {
			if text != "" {
				lines = append(lines, page.Paragraph{Style: size, Text: text})
			}
		}
	}
	q := p.prep()
	add("bar", p.bars()...)
	add("name", soluteNamed(q)+" in "+liquidNames(h))
	add("strength", strengthOn(q, h))
	add("small", shown(q, h), countedAs(q))
	add("hazard", hazardLines(q, p.result(), h)...)
	add("small", straddled(h), purposeOf(h, all), p.madeLine(l, h), p.Prep.Title, labelRules)
	return lines
}

// labelRules defers to those that decide what stands on a label.
const labelRules = "The safety data sheet and the local rules for labels decide what must stand here."

// madeLine says when a solution was made and by whom, with blanks to fill in. Until when it
// may be used is known of the solution wanted only.
func (p *Paper) madeLine(l Label, h *route.Handled) string {
	date := p.Date
	if date == "" && p.Batch != nil {
		date = p.Batch.madeOn(h.Step)
	}
	parts := clauses{"made " + cmp.Or(date, "____________"), "by " + cmp.Or(l.By, "______")}
	parts.Put("batch ", l.Batch)
	parts.Add(l.UseBy != "" && h.Last, "use by %s", l.UseBy)
	return strings.Join(parts, " · ")
}

// liquidNames are the liquids that a solution holds beside the solute.
func liquidNames(h *route.Handled) string {
	return quantity.Series(clause.Each(h.Solvents, func(c route.Contained) string { return c.Name }), "and")
}

// hazardLines are what is stated for a solution of its strength, and for each thing in it
// undiluted.
func hazardLines(q *route.Prep, r *route.Result, h *route.Handled) []string {
	lines := []string{
		"this solution: " + reminder.Solution(h, doubtOf(q, r, h), reminder.None),
		containsLine(q.Solute.Weighed(), h.Hazards.Undiluted),
	}
	for _, c := range h.Solvents {
		if saidOf(&c) {
			lines = append(lines, containsLine(c.Name, c.Hazards))
		}
	}
	if h.Hazards.Any("gas") {
		lines = append(lines, "vented closure: gives off gas")
	}
	return lines
}

func containsLine(name string, words []string) string {
	return fmt.Sprintf("contains %s, which undiluted is: %s", name, reminder.Substance(words, reminder.None))
}

// purposeOf says by its number which bottle it is, from which step, and what it is for.
func purposeOf(h *route.Handled, all []route.Handled) string {
	text := fmt.Sprintf("bottle %d, from step %d", h.Bottle, h.Step)
	if h.Last {
		return text + ", the solution wanted"
	}
	for _, use := range h.Uses {
		for i := range all {
			if next := &all[i]; next.Bottle > 0 && next.Step >= use {
				text += fmt.Sprintf(", stock for bottle %d (step %d)", next.Bottle, use)
				break
			}
		}
	}
	return text
}

// strengthOn is the strength of a solution with its basis and what it may be off by.
func strengthOn(q *route.Prep, h *route.Handled) string {
	s, unit, a := rounded(&h.Analytic, h.Quoted), q.Target.Unit.Name, &h.Analytic
	switch {
	case !h.Uninformative.None():
		return "strength not known: " + h.Uninformative.String()
	case s.GiveOrTake == "":
		return fmt.Sprintf("%s %s (%s to %s, about %s %%)", s.Value, unit, s.Lower, s.Upper, asked(a.CoverageProbability))
	case a.ExpandedUncertainty == 0:
		return fmt.Sprintf("%s %s, taken as exact", s.Value, unit)
	}
	_, k := a.Factors()
	return fmt.Sprintf("(%s ± %s) %s (%s = %s)", s.Value, s.GiveOrTake, unit, symbolk, k)
}

// shown is the strength of a solution in g/L where it is in % w/v.
func shown(q *route.Prep, h *route.Handled) string {
	s, unit := rounded(&h.Analytic, h.Quoted), q.Target.Unit.Name
	switch {
	case !h.Uninformative.None():
		return ""
	case s.GiveOrTake == "":
		return gramsPerLitre(unit, "%s (%s to %s)", s.Value, s.Lower, s.Upper)
	case h.Analytic.ExpandedUncertainty == 0:
		return gramsPerLitre(unit, "%s", s.Value)
	}
	return gramsPerLitre(unit, "(%s ± %s)", s.Value, s.GiveOrTake)
}
