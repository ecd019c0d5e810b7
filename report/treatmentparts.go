package report

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"minim/uncertainty"
)

// mostLines of a budget that are listed; what is below them adds up to little.
const mostLines = 15

// budget adds the table of the influences, the largest first.
func (p *Paper) budget(d *document) {
	r := p.result()
	lines := r.Analytic.Budget
	if r.Analytic.StandardUncertainty == 0 {
		d.section("What makes it uncertain", paragraph{Text: "Nothing that is counted."})
		return
	}
	t := tabular{Caption: "Uncertainty budget: contributions to the variance of the strength", Numbers: 3, Marked: -1,
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
		t.Rows = append(t.Rows, []string{line.Name, OwnerWords(line.Owner), marks(line), strings.TrimSpace(twoDigits(line.StandardUncertainty) + " " + line.Unit), signed(line.Contribution), fineShare(line.Share)})
	}
	if n := len(lines) - mostLines; n > 0 {
		t.Rows = append(t.Rows, []string{fmt.Sprintf("%d others together", n), "", "", "", "", fineShare(rest)})
	}
	d.section("What makes it uncertain", paragraph{Text: "The largest contributions come from " + spoilers(r) + " of the variance."}, t)
	if text := shifts(r); text != "" {
		d.add(paragraph{Text: "Known effects that shift the strength, for which it is corrected: " + text + "."})
	}
}

// signed prints two digits with a sign.
func signed(x float64) string {
	if x < 0 {
		return "-" + twoDigits(-x)
	}
	return twoDigits(x)
}

// batch adds what was recorded, and how it differs from the plan.
func (p *Paper) batch(d *document) {
	b := p.Batch
	d.section("What was recorded", paragraph{Text: "Record: " + recorded(b.Record) + "."})
	entries := entryTable(b.Record)
	entries.Caption = "Entries of the record; what no longer stands is struck through"
	d.add(entries)
	against := []string{againstPlan(b)}
	for _, e := range b.Effects {
		against = append(against, effectWords(b, e))
	}
	d.section("Against the plan", bulletList{append(against, gaps(b.Record)...)})
}

// alternatives adds the routes that were not taken.
func (p *Paper) alternatives(d *document) {
	if len(p.Results) < 2 {
		return
	}
	var list []term
	for i := range p.Results {
		if i != p.Verdict.Use {
			list = append(list, term{p.Results[i].Route.Name, whyNotAt(p.Comparison, &p.Results[i])})
		}
	}
	title := "Routes that were rejected, and why"
	if p.ByUser || p.Batch != nil {
		title = "Other routes that were considered"
	}
	d.section(title, termList{list})
	d.listed("To be minded of the other routes", p.otherMinds())
}

// otherMinds are the warnings about routes beside that of the document.
func (p *Paper) otherMinds() (list []string) {
	for _, w := range p.Notes.Warnings {
		if !slices.Contains(p.result().Notes.Warnings, w) {
			list = append(list, capital(w)+".")
		}
	}
	return list
}

// correlation says which influences come in more than once.
func (p *Paper) correlation() string {
	var parts []string
	budget := p.result().Analytic.Budget
	for i := range budget {
		if line := &budget[i]; line.Shared() && line.StandardUncertainty > 0 {
			parts = append(parts, fmt.Sprintf("%s (%d times)", line.Name, line.Uses))
		}
	}
	const rule = "An error of one piece, one material or one day is one and the same error wherever it comes in; two errors of one piece at different marks are correlated, by a half unless the kit says otherwise. No other correlation is counted."
	if len(parts) == 0 {
		return "No influence comes in more than once. " + rule
	}
	return "Come in more than once, each as one error: " + strings.Join(parts, "; ") + ". " + rule
}

// checked adds the analytic evaluation beside the simulation.
func (p *Paper) checked(d *document) {
	r := p.result()
	mc, a := &r.MonteCarlo, &r.Analytic
	place := func(x float64) string {
		text, _ := uncertainty.RoundExpanded(x, a.StandardUncertainty/10)
		return text
	}
	if a.StandardUncertainty == 0 {
		place = limit
	}
	rows := [][]string{
		{"law of propagation (JCGM 100)", place(a.Value), twoDigits(a.StandardUncertainty), place(a.Lower()), place(a.Upper())},
		{fmt.Sprintf("simulation of %s batches (JCGM 101)", Grouped(mc.Trials)), place(mc.Mean), twoDigits(mc.StandardDeviation), place(mc.Lower), place(mc.Upper)},
	}
	unit := p.prep().Target.Unit.Name
	d.section("Two ways to evaluate it", tabular{Caption: "In " + unit + ", for a coverage probability of " + Asked(a.CoverageProbability) + " %",
		Head: []string{"", "value", "standard uncertainty", "from", "to"}, Numbers: 1, Rows: rows, Marked: -1},
		paragraph{Text: capital(checked(p.Comparison, r)) + "."})
	if text := curved(r); text != "" {
		d.add(paragraph{Text: capital(text) + "."})
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

// origin says how the figures can be repeated.
func (p *Paper) origin(d *document) {
	r := p.result()
	list := []term{
		{"Made with", "minim " + p.Origin.Version},
		{"Command", p.Origin.Command},
		{"Simulation", fmt.Sprintf("%s batches, seed %d", Grouped(r.MonteCarlo.Trials), r.MonteCarlo.Seed)},
	}
	for _, f := range p.Origin.Files {
		list = append(list, term{f.Name, "SHA-256 " + f.SHA256})
	}
	d.section("To repeat it", termList{list})
}
