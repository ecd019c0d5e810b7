package words

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"minim/equipment"
	"minim/equipment/quantity"
	"minim/report/page"
	"minim/report/words/influence"
	"minim/report/words/inline"
	"minim/report/words/note"
	"minim/uncertainty"
	"minim/uncertainty/rounding"
	"minim/uncertainty/route"
)

// alternatives are the routes that were not taken.
func (p *Paper) alternatives() []page.Block {
	if len(p.Results) < 2 {
		return nil
	}
	list := others(p.Comparison, func(_ int, r *route.Result) fact { return fact{r.Route.Name, againstAt(p.Comparison, r)} })
	title := either(p.ByUser || p.Batch != nil, "Other routes that were considered", "Routes that were rejected, and why")
	return append(section(title, page.Facts{List: list}), listed("To be kept in mind of the other routes", p.otherMinds())...)
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
	var parts clauses
	budget := p.result().Analytic.Budget
	loads := false
	for i := range budget {
		line := &budget[i]
		loads = loads || equipment.IsLinearity(line.Code)
		step := when(line.Owner.Kind == uncertainty.OneUse, fmt.Sprintf(" in step %d", line.Owner.Step))
		parts.Add(line.Uses > 1 && line.StandardUncertainty > 0, "%s%s (%d times)", influence.Name(&line.Influence), step, line.Uses)
	}
	rule := "An error of one piece, one material or one day is one and the same error wherever it comes in; two errors of one piece at different marks are correlated, with the coefficient 0.5 unless the kit says otherwise" +
		when(loads, "; those of linearity at two loads of a balance by what the two have in common of its curve") + ". No other correlation is counted."
	return either(len(parts) == 0, "No error comes in more than once. ", "Errors that come in more than once, each as one and the same: "+strings.Join(parts, "; ")+". ") + p.ofReadings() + rule
}

// ofReadings says which readings tell of several influences how they scatter, with a blank
// after it; "" where none do.
func (p *Paper) ofReadings() string {
	var parts clauses
	budget := p.result().Analytic.Budget
	for i := range budget {
		set := budget[i].Set
		same := func(line uncertainty.Contribution) bool { return line.Set == set && line.Contribution != 0 }
		if set == (uncertainty.Set{}) || slices.IndexFunc(budget, same) != i {
			continue
		}
		uses := 0
		for k := range budget {
			if same(budget[k]) {
				uses++
			}
		}
		parts.Add(uses > 1, "the %s (%d times)", set.Owner.Name, uses)
	}
	if len(parts) == 0 {
		return ""
	}
	return "Each use scatters by itself, with one standard deviation that is known as well as its readings tell it: " + strings.Join(parts, "; ") + ". "
}

// twoWays has the analytic evaluation beside the simulation.
func (p *Paper) twoWays() []page.Block {
	r := p.result()
	mc, a := &r.MonteCarlo, &r.Analytic
	place := func(x float64) string {
		text, _ := rounding.Expanded(x, a.StandardUncertainty/10)
		return text
	}
	if a.StandardUncertainty == 0 {
		place = quantity.Number
	}
	rows := [][]string{
		{"law of propagation (JCGM 100)", place(a.Value), rounding.ThreeDigits(a.StandardUncertainty), place(a.Lower()), place(a.Upper())},
		{fmt.Sprintf("simulation of %s batches (JCGM 101)", quantity.Grouped(mc.Trials)), orNone(mc.Mean, place), orNone(mc.StandardDeviation, rounding.ThreeDigits), place(mc.Lower), place(mc.Upper)},
	}
	caption := fmt.Sprintf("In %s, for a coverage probability of %s %%", p.prep().Target.Unit.Name, asked(a.CoverageProbability))
	list := section("Two ways to evaluate it", &page.Table{Caption: caption, Head: []string{"", "value", "standard uncertainty", "from", "to"}, Numbers: 1, Rows: page.Rows(rows)},
		prose(capital(checked(p.Comparison, r, "expanded uncertainty"))+"."), prose(p.criterion()))
	if text := curved(r); text != "" {
		list = append(list, prose(capital(text)+"."))
	}
	return list
}

// criterion says by what the two evaluations are held to agree.
func (p *Paper) criterion() string {
	r := p.result()
	if r.Analytic.StandardUncertainty == 0 {
		return "They agree where both ends and the standard uncertainties are the same but for what the arithmetic rounds."
	}
	const text = "Criterion of agreement: both ends of the interval, and the standard uncertainties, differ by no more than δ = %s %s, that is half a unit of the last digit of %s where it is given with %s (JCGM 101, 7.9.2 and 8.1). " +
		"The lower ends differ by %s, the upper ones by %s%s. %s"
	c := &r.CrossCheck
	standard := "; the standard uncertainties cannot be compared, since the simulation has no standard deviation"
	if !math.IsNaN(c.DU) {
		standard = ", the standard uncertainties by " + p.difference(c.DU)
	}
	return fmt.Sprintf(text, quantity.Number(c.Tolerance), p.prep().Target.Unit.Name, symbolu, count(uncertainty.CheckedDigits, "significant digit"),
		p.difference(c.DLow), p.difference(c.DHigh), standard, p.decision())
}

// difference of two evaluations, with its unit; what is far below the criterion has no digits.
func (p *Paper) difference(by float64) string {
	c := &p.result().CrossCheck
	if by < c.Tolerance/100 {
		return "less than a hundredth of δ"
	}
	return rounding.TwoDigits(by) + " " + p.prep().Target.Unit.Name
}

// decision says which of the two evaluations is quoted, and why.
func (p *Paper) decision() string {
	r, most := p.result(), quantity.Percent(uncertainty.QuoteWithin)
	wide := ""
	if by := r.MonteCarlo.StandardDeviation - r.Analytic.StandardUncertainty; by > r.CrossCheck.Tolerance && fewTold(r) {
		wide = " The standard deviation of the simulation is the larger, since Student's t, which is drawn for few readings, scatters more than they do."
	}
	switch {
	case r.Quoted.Simulated:
		return fmt.Sprintf("Since an end differs by more than %s of %s, the interval of the simulation is quoted.", most, symbolU) + wide
	case r.CrossCheck.Agrees && r.CrossCheck.SameU():
		return "So they agree, and the law of propagation is quoted."
	case r.CrossCheck.Agrees && math.IsNaN(r.CrossCheck.DU):
		return "So the ends agree, and the law of propagation is quoted."
	}
	return fmt.Sprintf("So they do not agree within δ; the ends differ by no more than %s of %s, up to which the law of propagation is quoted.", most, symbolU) + wide
}

// fewTold reports whether few readings tell of something that counts.
func fewTold(r *route.Result) bool {
	return slices.ContainsFunc(r.Analytic.Budget, func(line uncertainty.Contribution) bool {
		return line.DegreesOfFreedom > 0 && line.DegreesOfFreedom < 10 && line.Share > 0.01
	})
}

// orNone prints a figure that may not exist.
func orNone(x float64, show func(float64) string) string {
	if math.IsNaN(x) {
		return "does not exist"
	}
	return show(x)
}

// groundTitles head on paper what a screen has behind another label.
var groundTitles = map[string]string{
	"Mind": "To be kept in mind", "Assumed": "Assumed", "From memory": "Figures from memory, not looked up in print", "Not counted": "Not counted",
}

// mind says what a reader must not miss of the result.
func (p *Paper) mind() []page.Block { return listed(groundTitles["Mind"], p.minds()) }

// grounds are what the result rests on, but for what stands below it.
func (p *Paper) grounds() (list []page.Block) {
	for _, g := range noteGrounds(&p.result().Notes) {
		if g.Label != "Mind" {
			list = append(list, listed(groundTitles[g.Label], g.Items)...)
		}
	}
	return list
}

// toRepeat says how the figures can be repeated.
func (p *Paper) toRepeat() []page.Block {
	r := p.result()
	list := []fact{
		{"Made with", "minim " + p.Origin.Version},
		{"Command", inline.Verbatim(p.Origin.Command)},
		{"Simulation", fmt.Sprintf("%s batches, seed %d", quantity.Grouped(r.MonteCarlo.Trials), r.MonteCarlo.Seed)},
	}
	for _, f := range p.Origin.Files {
		list = append(list, fact{inline.Verbatim(f.Name), "SHA-256 " + f.SHA256})
	}
	return section("To repeat it", page.Facts{List: list})
}
