package words

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"minim/equipment/quantity"
	"minim/report/page"
	"minim/report/words/clause"
	"minim/uncertainty/route"
)

// treatment is what a report of a preparation says, part by part.
type treatment struct {
	Title string
	// Outcome is the result, what to mind of it, and what can be quoted.
	Outcome []page.Block
	// Wanted says what was wanted, what the figure means, and by which route; Uncertain is what
	// makes it uncertain.
	Wanted, Uncertain []page.Block
	// Figure of the spread; what was Recorded, and how it differs from the plan; Alternatives are
	// the routes that were not taken. Each may be empty.
	Figure, Recorded, Alternatives []page.Block
	// Basis is what the result rests on; Closing is cautions, and how the figures can be repeated.
	Basis, Closing []page.Block
}

// Treatment words the report.
func (p *Paper) Treatment() *treatment {
	return &treatment{
		Title: p.subject(),
		Outcome: slices.Concat(p.headed(p.subject(), p.below()), section("Result", prose(p.statement()), prose(p.inside())), besideResult(p.result()), p.mind(),
			section("Method, to be quoted", quotation(p.method()))),
		Wanted:       slices.Concat(section("Purpose", prose(p.purpose())), section("What is stated", prose(p.measurand())), p.steps()),
		Uncertain:    p.budget(),
		Figure:       p.figure(),
		Recorded:     p.recorded(),
		Alternatives: p.alternatives(),
		Basis: slices.Concat(section("Correlations", prose(p.correlation())), p.twoWays(), p.grounds(),
			section("Instruments", &page.Table{Head: []string{"instrument", "reads", "class and standard", "limit of error", "trust"}, Numbers: 5, Rows: page.Rows(p.instrumentRows())})),
		Closing: slices.Concat(section("Cautions", page.Bullets{Items: p.cautions()}), p.toRepeat(), toSign()),
	}
}

// below is the line below the title.
func (p *Paper) below() string {
	parts := clauses{p.told("Report of a preparation, before it is made", "Report of a preparation as it was made")}
	if p.Batch != nil {
		parts.Put("batch ", p.Batch.Record.Batch)
	}
	parts.Put("", p.Date)
	parts.Put("", p.Prep.Note)
	return strings.Join(parts, " · ")
}

func (p *Paper) purpose() string {
	behindClause := when(unnamed(p.Prep), ",")
	text := fmt.Sprintf("%s%s %s to be made.", Wanted(p.Prep), behindClause, p.told("are", "were"))
	if len(p.Prep.Tolerances) == 0 {
		return text + " No tolerance is given."
	}
	list := clause.Each(p.Prep.Tolerances, func(t route.Tolerance) string { return toleranceIn(p.Prep, t) })
	lie := either(p.Prep.Tolerances[0].Stated, "be", "lie")
	return fmt.Sprintf("%s The strength is to %s %s, with a probability of at least %s %%.", text, lie, strings.Join(list, "; also "), asked(p.Prep.LeastChance))
}

// steps are the steps, and why this route.
func (p *Paper) steps() []page.Block {
	r := p.result()
	list := section("Route: "+p.Results[p.Verdict.Use].Route.Name, page.Steps{Items: Instructions(p.prep(), p.route())},
		prose(fmt.Sprintf("It %s %s.", p.told("makes", "made"), amounts(p.Prep, r, p.told("takes", "took")))))
	for _, f := range countedFacts(p.prep(), r) {
		list = append(list, prose(f.Label+": "+f.Text+"."))
	}
	switch {
	case p.ByUser:
		list = append(list, prose("The route was chosen by the author of this report."))
	case p.Batch == nil && p.Verdict.Meets:
		list = append(list, prose("Of the routes considered it is recommended, by rules in this order: "+policyLine(p.Prep)+"."))
	case p.Batch == nil && len(p.Prep.Tolerances) > 0:
		list = append(list, prose("No route considered is good enough; this is the best of them."))
	}
	return list
}

// inside says with what probability the strength is inside each tolerance.
func (p *Paper) inside() string {
	r := p.result()
	if len(r.Inside) == 0 {
		return fmt.Sprintf("It lies within %s of the target with a probability of %s %%.", quantity.Percent(r.HoldsWithin), asked(p.Settings.Coverage))
	}
	var parts []string
	for i, chance := range r.Inside {
		t := p.Prep.Tolerances[i]
		parts = append(parts, fmt.Sprintf("%s%s is %s %%", either(t.Stated, "being ", "lying "), toleranceIn(p.Prep, t), inHundred(chance.Simulated, p.Prep.LeastChance)))
	}
	text := fmt.Sprintf("The probability of %s%s (JCGM 106).", strings.Join(parts, ", and of "), p.told(", predicted before the solution is made", ", for this batch"))
	return text + when(r.Chance() < p.Prep.LeastChance, fmt.Sprintf(" %s less than the %s %% asked for.", either(len(parts) > 1, "The first is", "That is"), asked(p.Prep.LeastChance))) + closeSentence(p.Prep, r)
}

// figure is the picture of the spread, if there is one, as wide as the page.
func (p *Paper) figure() (list []page.Block) {
	caption := "How the strength spreads: each dot is one chance in a hundred" + when(len(p.Prep.Tolerances) > 0, "; the shaded band is the tolerance")
	for i, spread := range p.Spreads {
		spread.Class, spread.Caption = "full", caption+when(len(p.Spreads) > 1, fmt.Sprintf(" (part %d of %d)", i+1, len(p.Spreads)))+"."
		list = append(list, spread)
	}
	return list
}

// Foot stands on every page of a report.
func (p *Paper) Foot() string {
	parts := clauses{p.subject()}
	if p.Batch != nil {
		parts.Put("batch ", cmp.Or(p.Batch.Record.Batch, "____________"))
	}
	parts.Put("", p.Date)
	return strings.Join(parts, " · ")
}

// toSign has room to sign for those who answer for the report.
func toSign() []page.Block {
	return section("Signed", &page.Table{Head: []string{"", "name", "signature", "date"}, Numbers: 4, Class: "form sign", Rows: page.Rows([][]string{{"drawn up by", "", "", ""}, {"checked by", "", "", ""}})})
}

// recorded is what was recorded, and how it differs from the plan; nothing without a batch.
func (p *Paper) recorded() []page.Block {
	b := p.Batch
	if b == nil {
		return nil
	}
	entries := entryTable(b.Record)
	entries.Caption = "Entries of the record; what no longer stands is struck through"
	against := []string{AgainstPlan(b)}
	for _, e := range b.Effects {
		against = append(against, EffectWords(b, e))
	}
	return append(section("What was recorded", prose("Record: "+recorded(b.Record)+"."), entries),
		listed("Against the plan", append(against, Gaps(b.Record)...))...)
}
