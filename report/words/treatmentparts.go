package words

import (
	"fmt"
	"math"
	"strings"

	"minim/equipment/quantity"
	"minim/report/page"
	"minim/report/words/influence"
	"minim/report/words/note"
	"minim/uncertainty"
)

// mostLines of a budget that are listed; what is below them adds up to little.
const mostLines = 15

// budget adds the table of the influences, the largest first.
func (p *Paper) budget(d *page.Page) {
	r := p.result()
	lines := r.Analytic.Budget
	if r.Analytic.StandardUncertainty == 0 {
		d.Section("What makes it uncertain", page.Paragraph{Text: "Nothing that is counted."})
		return
	}
	t := &page.Table{Caption: "Uncertainty budget: contributions to the variance of the strength", Numbers: 3,
		Head: []string{"influence", "owner", "marked", "standard uncertainty", "contribution to u / " + p.prep().Target.Unit.Name, "share"}}
	rest := 0.0
	for i := range lines {
		line := &lines[i]
		if math.Abs(line.Contribution) <= 1e-9*r.Analytic.StandardUncertainty {
			continue // it cancels, or is exactly known
		}
		if i >= mostLines {
			rest += line.Share
			continue
		}
		t.Rows = append(t.Rows, page.Row{Cells: []string{influence.Name(&line.Influence), influence.Owner(line.Owner), marks(line), strings.TrimSpace(uncertainty.TwoDigits(line.StandardUncertainty) + " " + line.Unit), signed(line.Contribution), FineShare(line.Share)}})
	}
	if n := len(lines) - mostLines; n > 0 {
		t.Rows = append(t.Rows, page.Row{Cells: []string{fmt.Sprintf("%d others together", n), "", "", "", "", FineShare(rest)}})
	}
	d.Section("What makes it uncertain", page.Paragraph{Text: "The largest contributions come from " + spoilers(r) + " of the variance."}, t)
	if text := shifts(r); text != "" {
		d.Add(page.Paragraph{Text: "Known effects that shift the strength, for which it is corrected: " + text + "."})
	}
}

// signed prints two digits with a sign.
func signed(x float64) string {
	if x < 0 {
		return "-" + uncertainty.TwoDigits(-x)
	}
	return uncertainty.TwoDigits(x)
}

// Recorded adds what was recorded, and how it differs from the plan.
func (p *Paper) Recorded(d *page.Page) {
	b := p.Batch
	d.Section("What was recorded", page.Paragraph{Text: "Record: " + recorded(b.Record) + "."})
	entries := entryTable(b.Record)
	entries.Caption = "Entries of the record; what no longer stands is struck through"
	d.Add(entries)
	against := []string{againstPlan(b)}
	for _, e := range b.Effects {
		against = append(against, effectWords(b, e))
	}
	d.Section("Against the plan", page.Bullets{Items: append(against, gaps(b.Record)...)})
}

// Alternatives adds the routes that were not taken.
func (p *Paper) Alternatives(d *page.Page) {
	if len(p.Results) < 2 {
		return
	}
	var list []page.Fact
	for i := range p.Results {
		if i != p.Verdict.Use {
			list = append(list, page.Fact{p.Results[i].Route.Name, whyNotAt(p.Comparison, &p.Results[i])})
		}
	}
	title := "Routes that were rejected, and why"
	if p.ByUser || p.Batch != nil {
		title = "Other routes that were considered"
	}
	d.Section(title, page.Facts{List: list})
	d.Listed("To be minded of the other routes", p.otherMinds())
}

// otherMinds are the warnings about routes beside that of the document.
func (p *Paper) otherMinds() (list []string) {
	for _, w := range p.Notes.Warnings {
		if !note.Contains(p.result().Notes.Warnings, w) {
			list = append(list, capital(w.String())+".")
		}
	}
	return list
}

// correlation says which influences come in more than once.
func (p *Paper) correlation() string {
	var parts []string
	budget := p.result().Analytic.Budget
	for i := range budget {
		if line := &budget[i]; line.Uses > 1 && line.StandardUncertainty > 0 {
			parts = append(parts, fmt.Sprintf("%s (%d times)", influence.Name(&line.Influence), line.Uses))
		}
	}
	const rule = "An error of one piece, one material or one day is one and the same error wherever it comes in; two errors of one piece at different marks are correlated, by a half unless the kit says otherwise. No other correlation is counted."
	if len(parts) == 0 {
		return "No influence comes in more than once. " + rule
	}
	return "Come in more than once, each as one error: " + strings.Join(parts, "; ") + ". " + rule
}

// twoWays adds the analytic evaluation beside the simulation.
func (p *Paper) twoWays(d *page.Page) {
	r := p.result()
	mc, a := &r.MonteCarlo, &r.Analytic
	place := func(x float64) string {
		text, _ := uncertainty.RoundExpanded(x, a.StandardUncertainty/10)
		return text
	}
	if a.StandardUncertainty == 0 {
		place = quantity.Number
	}
	rows := [][]string{
		{"law of propagation (JCGM 100)", place(a.Value), uncertainty.TwoDigits(a.StandardUncertainty), place(a.Lower()), place(a.Upper())},
		{fmt.Sprintf("simulation of %s batches (JCGM 101)", quantity.Grouped(mc.Trials)), place(mc.Mean), uncertainty.TwoDigits(mc.StandardDeviation), place(mc.Lower), place(mc.Upper)},
	}
	unit := p.prep().Target.Unit.Name
	d.Section("Two ways to evaluate it", &page.Table{Caption: "In " + unit + ", for a coverage probability of " + Asked(a.CoverageProbability) + " %",
		Head: []string{"", "value", "standard uncertainty", "from", "to"}, Numbers: 1, Rows: page.Rows(rows)},
		page.Paragraph{Text: capital(checked(p.Comparison, r)) + "."})
	if text := curved(r); text != "" {
		d.Add(page.Paragraph{Text: capital(text) + "."})
	}
}

func groundTitle(label string) string {
	switch label {
	case "Mind":
		return "To be minded"
	case "From memory":
		return "Figures from memory, which nobody has looked up"
	}
	return label
}

// mind says what a reader must not miss of the result.
func (p *Paper) mind(d *page.Page) { d.Listed(groundTitle("Mind"), p.minds()) }

// grounds are what the result rests on, but for what stands below it.
func (p *Paper) grounds(d *page.Page) {
	for _, g := range noteGrounds(&p.result().Notes) {
		if g.label != "Mind" {
			d.Listed(groundTitle(g.label), g.list)
		}
	}
}

// instruments are those of the route, and how good each is.
func (p *Paper) instruments(d *page.Page) {
	d.Section("Instruments", &page.Table{Head: []string{"instrument", "reads", "class and standard", "limit of error", "trust"}, Numbers: 5, Rows: page.Rows(p.instrumentRows())})
}

// toRepeat says how the figures can be repeated.
func (p *Paper) toRepeat(d *page.Page) {
	r := p.result()
	list := []page.Fact{
		{"Made with", "minim " + p.Origin.Version},
		{"Command", p.Origin.Command},
		{"Simulation", fmt.Sprintf("%s batches, seed %d", quantity.Grouped(r.MonteCarlo.Trials), r.MonteCarlo.Seed)},
	}
	for _, f := range p.Origin.Files {
		list = append(list, page.Fact{f.Name, "SHA-256 " + f.SHA256})
	}
	d.Section("To repeat it", page.Facts{List: list})
}
