package words

import (
	"fmt"
	"strings"

	"minim/equipment/quantity"
	"minim/report/page"
)

// Opening says what was wanted, what the figure means, and by which route.
func (p *Paper) Opening(d *page.Page) {
	p.headed(d, page.Title{Text: p.Subject(), Below: p.below()})
	p.aimsElsewhere(d)
	d.Section("Purpose", page.Paragraph{Text: p.purpose()})
	d.Section("What is stated", page.Paragraph{Text: p.measurand()})
	p.steps(d)
}

// Outcome is the result, what to mind of it, and what makes it uncertain.
func (p *Paper) Outcome(d *page.Page) {
	d.Section("Result", page.Paragraph{Text: p.statement()}, p.inside())
	p.mind(d)
	p.budget(d)
}

// Basis is what the result rests on.
func (p *Paper) Basis(d *page.Page) {
	d.Section("How what is shared was treated", page.Paragraph{Text: p.correlation()})
	p.twoWays(d)
	p.grounds(d)
	p.instruments(d)
}

// Closing is what can be quoted, cautions, and how the figures can be repeated.
func (p *Paper) Closing(d *page.Page) {
	d.Section("Method, to be quoted", page.Quotation{Text: p.method()})
	d.Section("Cautions", page.Bullets{Items: p.cautions()})
	p.toRepeat(d)
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
	lie := map[bool]string{true: "be", false: "lie"}[p.Prep.Tolerances[0].Stated]
	return fmt.Sprintf("%s The strength is to %s %s, with a probability of at least %s %%.", text, lie, strings.Join(list, "; also "), Asked(p.Prep.LeastChance))
}

// steps adds the steps, and why this route.
func (p *Paper) steps(d *page.Page) {
	r := p.result()
	d.Section("Route: "+p.Results[p.Verdict.Use].Route.Name, page.Steps{Items: Instructions(p.prep(), p.route())})
	made := "makes"
	if p.Batch != nil {
		made = "made"
	}
	d.Add(page.Paragraph{Text: fmt.Sprintf("It %s %s.", made, amounts(p.Prep, r, map[bool]string{true: "took", false: "takes"}[p.Batch != nil]))})
	for _, f := range countedFacts(p.prep(), r) {
		d.Add(page.Paragraph{Text: f.Label + ": " + f.Text + "."})
	}
	switch {
	case p.ByUser:
		d.Add(page.Paragraph{Text: "The route was chosen by the author of this report."})
	case p.Batch == nil && p.Verdict.Meets:
		d.Add(page.Paragraph{Text: fmt.Sprintf("Of the routes that are inside the tolerance with a probability of at least %s %%, it leaves the least over.", Asked(p.Prep.LeastChance))})
	case p.Batch == nil && len(p.Prep.Tolerances) > 0:
		d.Add(page.Paragraph{Text: "No route considered is good enough; this is the nearest."})
	}
}

// inside says with what probability the strength is inside each tolerance.
func (p *Paper) inside() page.Block {
	r := p.result()
	if len(r.Inside) == 0 {
		return page.Paragraph{Text: fmt.Sprintf("It lies within %s of the target with a probability of %s %%.", quantity.Percent(r.HoldsWithin), Asked(p.Settings.Coverage))}
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
	return page.Paragraph{Text: text}
}

func (p *Paper) Figure(d *page.Page) {
	if p.Picture == nil {
		return
	}
	caption := "How the strength spreads: each dot is one chance in a hundred; the shaded band is the tolerance."
	if len(p.Prep.Tolerances) == 0 {
		caption = "How the strength spreads: each dot is one chance in a hundred."
	}
	d.Add(page.Figure{PNG: p.Picture, File: p.PictureFile, Alt: p.Alt, Caption: caption})
}
