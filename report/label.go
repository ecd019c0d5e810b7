package report

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"minim/uncertainty/route"
)

// Label is what stands on a bottle beside the solution.
type Label struct {
	// Count of labels on the sheet.
	Count int
	// By whom, the Batch, and until when it may be used; each may be empty.
	By, Batch, UseBy string
}

// Of is the label with what the record of a batch says, where that is not stated.
func (l Label) Of(b *Batch, by, batch bool) Label {
	if !by {
		l.By = strings.Join(makers(b.Record), ", ")
	}
	if !batch {
		l.Batch = b.Record.Batch
	}
	return l
}

// LabelHTML is a sheet of labels to be cut out, as HTML.
func LabelHTML(p *Paper, l Label) ([]byte, error) { return p.labels(l).html() }

// LabelMarkdown is one label in Markdown.
func LabelMarkdown(p *Paper, l Label) []byte { return p.labels(l).markdown("") }

func (p *Paper) labels(l Label) *document {
	d := &document{Title: "Labels: " + p.subject(), Kind: "labels-page"}
	d.stops(p.Prep)
	q, r := p.Prep, p.result()
	words, said := hazardWords(q, r)
	lines := []labelLine{
		{"name", q.Solute.Name + " in " + q.Solvent.Name},
		{"strength", stated(q, r)},
		{"hazard", strings.Join(words, " · ")},
	}
	made := []string{"made " + p.Date}
	if p.Date == "" {
		made[0] = "made ____________"
	}
	for _, part := range []struct{ label, text string }{{"by", cmp.Or(l.By, "______")}, {"batch", l.Batch}, {"use by", l.UseBy}} {
		if part.text != "" {
			made = append(made, part.label+" "+part.text)
		}
	}
	lines = append(lines, labelLine{"small", strings.Join(made, " · ")})
	if p.Prep.Title != "" {
		lines = append(lines, labelLine{"small", p.Prep.Title})
	}
	if slices.ContainsFunc(words, func(w string) bool { return strings.EqualFold(w, "gives off gas") }) {
		lines = append(lines, labelLine{"hazard", "vented closure: gives off gas"})
	}
	if said != "" {
		lines = append(lines, labelLine{"small", said})
	}
	d.add(labelSheet{l.Count, lines})
	return d
}

// stated is the strength with its basis and what it may be off by.
func stated(q *route.Prep, r *route.Result) string {
	s, unit := State(r), q.Target.Unit.Name
	if !r.Informative {
		return "strength not known: " + r.Uninformative
	}
	if s.GiveOrTake == "" {
		return fmt.Sprintf("%s %s (%s to %s, about %s %%)", s.Value, unit, s.Lower, s.Upper, Asked(r.Analytic.CoverageProbability))
	}
	return fmt.Sprintf("%s ± %s %s (k = %.2f)", s.Value, s.GiveOrTake, unit, r.Analytic.CoverageFactor)
}

// hazardWords are the user's words for the solution. Words that hold from a strength on
// are taken where the upper end of the coverage interval reaches it: the stricter side
// of a limit that lies inside the interval, which is then said.
func hazardWords(q *route.Prep, r *route.Result) (list []string, said string) {
	var straddled []string
	add := func(more []string) {
		for _, w := range more {
			if !slices.Contains(list, w) {
				list = append(list, w)
			}
		}
	}
	for _, h := range q.Hazards {
		if r.Quoted.Upper < h.From.Value {
			continue
		}
		add(h.Words)
		if r.Quoted.Lower < h.From.Value {
			straddled = append(straddled, h.From.Text)
		}
	}
	if len(q.Hazards) == 0 {
		add(orUnknown(q.Solute.Name, q.Solute.Hazards))
	}
	add(orUnknown(q.Solvent.Name, q.Solvent.Hazards))
	for _, name := range otherSolvents(q, r.Route) {
		add(orUnknown(name, nil))
	}
	if len(straddled) > 0 {
		said = fmt.Sprintf("the strength could be on either side of %s: labelled for the stricter", series(straddled, "and"))
	}
	if len(list) == 0 {
		list = []string{"weaker than any strength that hazard words were stated for"}
	}
	return list, said
}

// orUnknown are the words stated for what goes into the solution, or that there are none.
// Water needs none.
func orUnknown(name string, words []string) []string {
	if len(words) > 0 || name == "water" {
		return words
	}
	return []string{"hazards of " + name + " not stated, treat as unknown"}
}
