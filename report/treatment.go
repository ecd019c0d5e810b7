package report

import (
	"fmt"
	"strings"

	"minim/equipment/quantity"
)

// ReportHTML is the report of a preparation as one HTML page.
func ReportHTML(p *Paper) ([]byte, error) { return p.report().html() }

// ReportMarkdown is the same in Markdown. The picture stands in a file beside it, of the
// name given; without one it is left out.
func ReportMarkdown(p *Paper, picture string) []byte { return p.report().markdown(picture) }

// report is a section for a treatment report: what was to be made and why so, by which
// route, the result with its uncertainty, and what it rests on.
func (p *Paper) report() *document {
	d := &document{Title: p.subject(), Kind: "report"}
	d.stops(p.Prep)
	p.headed(d, headline{p.subject(), p.below()})
	p.aimsElsewhere(d)
	d.section("Purpose", paragraph{Text: p.purpose()})
	d.section("What is stated", paragraph{Text: p.measurand()})
	p.steps(d)
	d.section("Result", paragraph{Text: p.statement()}, p.inside())
	d.listed(groundTitle("Mind"), p.minds())
	p.budget(d)
	if p.Batch != nil {
		p.figure(d)
		p.batch(d)
	}
	p.alternatives(d)
	if p.Batch == nil {
		p.figure(d)
	}
	d.section("How what is shared was treated", paragraph{Text: p.correlation()})
	p.checked(d)
	for _, g := range noteGrounds(&p.result().Notes) {
		if g.label != "Mind" { // which stands below the result
			d.listed(groundTitle(g.label), g.list)
		}
	}
	d.section("Instruments", tabular{Head: []string{"instrument", "reads", "class and standard", "limit of error", "trust"}, Numbers: 5, Rows: p.instrumentRows(), Marked: -1})
	d.section("Method, to be quoted", quotation{p.method()})
	d.section("Cautions", bulletList{p.cautions()})
	p.origin(d)
	return d
}

// below is the line below the title.
func (p *Paper) below() string {
	parts := []string{"Report of a preparation, before it is made"}
	if p.Batch != nil {
		parts[0] = "Report of a preparation as it was made"
		if p.Batch.Record.Batch != "" {
			parts = append(parts, "batch "+p.Batch.Record.Batch)
		}
	}
	if p.Date != "" {
		parts = append(parts, p.Date)
	}
	if p.Prep.Note != "" {
		parts = append(parts, p.Prep.Note)
	}
	return strings.Join(parts, " · ")
}

func (p *Paper) purpose() string {
	verb := "are to be made"
	if p.Batch != nil {
		verb = "were to be made"
	}
	wanted := Wanted(p.Prep)
	if unnamed(p.Prep) {
		wanted += "," // behind a clause
	}
	text := fmt.Sprintf("%s %s.", wanted, verb)
	if len(p.Prep.Tolerances) == 0 {
		return text + " No tolerance is given."
	}
	var list []string
	for _, t := range p.Prep.Tolerances {
		list = append(list, tolerance(t))
	}
	lie := map[bool]string{true: "be", false: "lie"}[p.Prep.Tolerances[0].Stated()]
	return fmt.Sprintf("%s The strength is to %s %s, with a probability of at least %s %%.", text, lie, strings.Join(list, "; also "), Asked(p.Prep.LeastChance))
}

// steps adds the steps, and why this route.
func (p *Paper) steps(d *document) {
	r := p.result()
	d.section("Route: "+p.Results[p.Verdict.Use].Route.Name, instructionList{Instructions(p.prep(), p.route())})
	made := "makes"
	if p.Batch != nil {
		made = "made"
	}
	d.add(paragraph{Text: fmt.Sprintf("It %s %s.", made, amounts(p.Prep, r, map[bool]string{true: "took", false: "takes"}[p.Batch != nil]))})
	for _, f := range countedFacts(p.prep(), r) {
		d.add(paragraph{Text: f.label + ": " + f.text + "."})
	}
	switch {
	case p.ByUser:
		d.add(paragraph{Text: "The route was chosen by the author of this report."})
	case p.Batch == nil && p.Verdict.Meets:
		d.add(paragraph{Text: fmt.Sprintf("Of the routes that are inside the tolerance with a probability of at least %s %%, it leaves the least over.", Asked(p.Prep.LeastChance))})
	case p.Batch == nil && len(p.Prep.Tolerances) > 0:
		d.add(paragraph{Text: "No route considered is good enough; this is the nearest."})
	}
}

// inside says with what probability the strength is inside each tolerance.
func (p *Paper) inside() block {
	r := p.result()
	if len(r.Inside) == 0 {
		return paragraph{Text: fmt.Sprintf("It lies within %s of the target with a probability of %s %%.", quantity.Percent(r.HoldsWithin), Asked(p.Settings.Coverage))}
	}
	word := "The probability, predicted before the solution is made, of being inside the tolerance (JCGM 106)"
	if p.Batch != nil {
		word = "The probability that this batch is inside the tolerance (JCGM 106)"
	}
	var parts []string
	for i, chance := range r.Inside {
		parts = append(parts, fmt.Sprintf("%s: %s %%", tolerance(p.Prep.Tolerances[i]), InHundred(chance.Simulated, p.Prep.LeastChance)))
	}
	text := word + " is, " + strings.Join(parts, "; ") + "."
	if r.Chance() < p.Prep.LeastChance {
		text += fmt.Sprintf(" That is less than the %s %% asked for.", Asked(p.Prep.LeastChance))
	}
	return paragraph{Text: text}
}

func (p *Paper) figure(d *document) {
	if p.Picture == nil {
		return
	}
	caption := "How the strength spreads: each dot is one chance in a hundred; the shaded band is the tolerance."
	if len(p.Prep.Tolerances) == 0 {
		caption = "How the strength spreads: each dot is one chance in a hundred."
	}
	d.add(picture{PNG: p.Picture, Alt: p.Alt, Caption: caption})
}
