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
	// Layout of the labels on paper.
	Layout page.LabelLayout
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
	sheet.LabelLayout = l.Layout
	for i := range all {
		h := &all[i]
		if h.Bottle == 0 {
			continue
		}
		count := 1
		if h.Last {
			count = l.Count
		}
		sheet.List = append(sheet.List, page.Label{Count: count, Of: fmt.Sprintf("bottle %d", h.Bottle), Lines: p.label(h, all, l)})
	}
	return sheet
}

// label is that of one bottle.
func (p *Paper) label(h *route.Handled, all []route.Handled, l Label) (lines []page.LabelLine) {
	add := func(style string, texts ...[3]string) {
		for _, t := range texts {
			if t[0] != "" {
				lines = append(lines, page.LabelLine{Paragraph: page.Paragraph{Style: style, Text: t[0]}, Short: t[1], Shortest: t[2]})
			}
		}
	}
	may := func(text string) {
		if text != "" {
			lines = append(lines, page.LabelLine{Paragraph: page.Paragraph{Style: "small", Text: text}, May: true})
		}
	}
	q := p.prep()
	for _, text := range p.bars() {
		head, _, _ := strings.Cut(text, ":")
		short := when(head == strings.ToUpper(head), head)
		add("bar", [3]string{text, short, short})
	}
	add("name", [3]string{soluteNamed(q) + " in " + liquidNames(h)})
	add("strength", strengthOn(q, h))
	may(shown(q, h))
	add("small", [3]string{countedAs(q)})
	add("hazard", hazardLines(q, p.result(), h)...)
	bottle := fmt.Sprintf("bottle %d", h.Bottle)
	add("small", [3]string{straddled(h)}, [3]string{purposeOf(h, all), bottle, bottle})
	lines = append(lines, p.madeLine(l, h))
	may(p.Prep.Title)
	may(labelRules)
	return lines
}

// labelRules defers to those that decide what stands on a label.
const labelRules = "The safety data sheet and the local rules for labels decide what must stand here."

// madeLine says when a solution was made and by whom, with blanks to fill in. Until when it
// may be used is known of the solution wanted only.
func (p *Paper) madeLine(l Label, h *route.Handled) page.LabelLine {
	date := p.Date
	if date == "" && p.Batch != nil {
		date = p.Batch.madeOn(h.Step)
	}
	var known, field clauses
	known.Put("made ", date)
	known.Put("by ", l.By)
	field.Add(date == "", "made on")
	field.Add(l.By == "", "by")
	parts := clauses{"made " + cmp.Or(date, "____________"), "by " + cmp.Or(l.By, "______")}
	for _, list := range []*clauses{&parts, &known} {
		list.Put("batch ", l.Batch)
		list.Add(l.UseBy != "" && h.Last, "use by %s", l.UseBy)
	}
	said := page.Paragraph{Style: "small", Text: strings.Join(parts, " · ")}
	return page.LabelLine{Paragraph: said, Known: strings.Join(known, " · "), Field: strings.Join(field, ", ")}
}

// liquidNames are the liquids that a solution holds beside the solute.
func liquidNames(h *route.Handled) string {
	return quantity.Series(clause.Each(h.Solvents, func(c route.Contained) string { return c.Name }), "and")
}

// hazardLines are what is stated for a solution of its strength, and for each thing in it
// undiluted.
func hazardLines(q *route.Prep, r *route.Result, h *route.Handled) [][3]string {
	whole := reminder.Solution(h, doubtOf(q, r, h), reminder.None)
	lines := [][3]string{
		{"this solution: " + whole, "solution: " + whole},
		containsLine(q.Solute.Weighed(), h.Hazards.Undiluted),
	}
	for _, c := range h.Solvents {
		if saidOf(&c) {
			lines = append(lines, containsLine(c.Name, c.Hazards))
		}
	}
	if h.Hazards.Any("gas") {
		lines = append(lines, [3]string{"vented closure: gives off gas"})
	}
	return lines
}

func containsLine(name string, words []string) [3]string {
	is := ": " + reminder.Substance(words, reminder.None)
	return [3]string{fmt.Sprintf("contains %s, which undiluted is%s", name, is), fmt.Sprintf("undiluted %s%s", name, is)}
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

// strengthOn is the strength of a solution with its basis and what it may be off by, and the same
// without its basis and without what it may be off by.
func strengthOn(q *route.Prep, h *route.Handled) [3]string {
	s, unit, a := rounded(&h.Analytic, h.Quoted), q.Target.Unit.Name, &h.Analytic
	alone := s.Value + " " + unit
	switch {
	case !h.Uninformative.None():
		const not = "strength not known"
		return [3]string{not + ": " + h.Uninformative.String(), not, not}
	case s.GiveOrTake == "":
		within := fmt.Sprintf("%s (%s to %s", alone, s.Lower, s.Upper)
		return [3]string{fmt.Sprintf("%s, about %s %%)", within, asked(a.CoverageProbability)), within + ")", alone}
	case a.ExpandedUncertainty == 0:
		return [3]string{alone + ", taken as exact", alone, alone}
	}
	_, k := a.Factors()
	give := fmt.Sprintf("(%s ± %s) %s", s.Value, s.GiveOrTake, unit)
	return [3]string{fmt.Sprintf("%s (%s = %s)", give, symbolk, k), give, alone}
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
