package words

import (
	"errors"
	"fmt"
	"math"

	"minim/equipment/quantity"
	"minim/report/page"
	"minim/report/words/clause"
	"minim/report/words/influence"
	"minim/report/words/inline"
	"minim/report/words/kits"
	"minim/report/words/note"
	"minim/report/words/verb"
	"minim/uncertainty"
	"minim/uncertainty/rounding"
	"minim/uncertainty/route"
)

// Paper is what the documents for paper are made of.
type Paper struct {
	// Comparison of the routes; its verdict names the route that the document is about.
	*route.Comparison
	// ByUser: that route was chosen by the user, not by the rule of the comparison.
	ByUser bool
	// Batch that was made by the route; nil where none is reported.
	Batch *Batch
	// Date of the document, as it is printed.
	Date string
	// Spreads are the pictures of the spread, which is one or has several parts; in Markdown they stand in
	// files beside the document, and are left out without them.
	Spreads []page.Figure
	// Origin of the figures, so that anyone can repeat them.
	Origin Origin
}

// Origin says by what a document was made, and from what.
type Origin struct {
	Version, Command string
	Files            []File
}

// File is an input, by its name and the SHA-256 of its bytes in hexadecimal digits.
type File struct{ Name, SHA256 string }

// result is that of the batch, or else that of the route.
func (p *Paper) result() *route.Result {
	if p.Batch != nil {
		return &p.Batch.AsMade
	}
	return &p.Results[p.Verdict.Use]
}

// prep is the prep with the bench as it was on the day of the batch.
func (p *Paper) prep() *route.Prep {
	if p.Batch != nil {
		return p.Batch.Prep
	}
	return p.Prep
}

// told is the one word of a route that is planned, and the other of a batch that was made.
func (p *Paper) told(planned, made string) string { return either(p.Batch == nil, planned, made) }

// route is the one that was made, or is to be made.
func (p *Paper) route() *route.Route { return p.result().Route }

// subject is the title of the prep, or what is to be made.
func (p *Paper) subject() string {
	if t := p.Prep.Title; t != "" {
		return t
	}
	return solution(p.Prep)
}

// quantities are the kinds of quantity that strengths in a unit are (ISO 80000-9, from
// memory), and counted is what a unit counts over what, where that is not plain from it.
var (
	quantities = map[string]string{
		"% w/v": massConcentration, "g/L": massConcentration, "mg/mL": massConcentration, "mg/L": massConcentration, "µg/mL": massConcentration, "volumes": massConcentration,
		"mol/L": amountConcentration, "mmol/L": amountConcentration, "µmol/L": amountConcentration,
		"% w/w": "mass fraction", "% v/v": "volume concentration", "U/mL": "catalytic activity concentration",
	}
	counted = map[string]string{
		"% w/v": " (grams in 100 mL of solution; 1 % w/v is 10 g/L)", "% w/w": " (grams in 100 g of solution)",
		"% v/v": " (millilitres of the liquid solute in 100 mL of solution)", "U/mL": " (units of activity in 1 mL of solution)",
		"volumes": " (mL of oxygen that 1 mL of solution gives off, 3.035 g of hydrogen peroxide in a litre for each)",
	}
)

const massConcentration, amountConcentration = "mass concentration", "amount-of-substance concentration"

// measurand says in words what is measured.
func (p *Paper) measurand() string {
	q := p.prep()
	unit := q.Target.Unit.Name
	return fmt.Sprintf("The measurand %s is the %s in %s%s of %s in the solution %s, in %s, at 20 °C and at the time when it is finished.",
		inline.Symbol(Letter(q)), quantities[unit], unit, counted[unit], Meant(q), p.told("that the route gives", "as it was made"), q.Solvent.Name)
}

// cautions are those about what the route handles.
func (p *Paper) cautions() []string { return Cautions(p.prep(), WithoutLadder(p.result())) }

// minds are what a reader must not miss of the result: all that the screen says is to be
// minded.
func (p *Paper) minds() (list []string) {
	r := p.result()
	if !r.Informative {
		list = append(list, "The figure says almost nothing: "+r.Uninformative.String()+".")
	}
	return append(list, clause.Each(note.Joined(r.Notes.Warnings), func(text string) string { return capital(text) + "." })...)
}

// statement is the result as JCGM 100, 7.2 wants it.
func (p *Paper) statement() string {
	r, unit, letter := p.result(), p.prep().Target.Unit.Name, inline.Symbol(Letter(p.prep()))
	a, s := &r.Analytic, state(r)
	u, k := a.Factors()
	what := fmt.Sprintf(either(unnamed(p.prep()), "the %s, in the solution at 20 °C, of %s", "the %s of %s in the solution at 20 °C"), quantities[unit], Meant(p.prep()))
	switch {
	case a.StandardUncertainty == 0:
		return fmt.Sprintf("%s = %s %s%s is %s; nothing that is counted is uncertain.", letter, s.Value, unit, gramsPerLitre(unit, " = %s", s.Value), what)
	case r.Quoted.Simulated:
		return p.simulated(u, what)
	}
	const text = "%s = (%s ± %s) %s%s is %s. The number after the sign ± is the expanded uncertainty %s = %s %s (%s of %[1]s), with the combined standard uncertainty %[9]s = %[11]s %[4]s and the coverage factor %[8]s = %[12]s, %[13]s; it defines an interval with a coverage probability of about %[14]s %%."
	return fmt.Sprintf(text, letter, s.Value, s.GiveOrTake, unit, gramsPerLitre(unit, " = (%s ± %s)", s.Value, s.GiveOrTake), what,
		symbolU, symbolk, symbolu, relative(a), u, k, factorFrom(a.DegreesOfFreedom), asked(a.CoverageProbability))
}

// symmetric is what the coverage interval of a simulation is called that is quoted (JCGM 101,
// 3.15).
const symmetric = "probabilistically symmetric interval"

// Interval names the interval that is quoted.
func Interval(q uncertainty.Quoted) string {
	return either(q.Simulated, symmetric, "expanded uncertainty")
}

// simulated is the result where that of the simulation is quoted, with its own digits.
func (p *Paper) simulated(u, what string) string {
	r, unit, letter := p.result(), p.prep().Target.Unit.Name, inline.Symbol(Letter(p.prep()))
	a, s := &r.Analytic, state(r)
	const text = "%s = %s %s%s is %s: %s. The %s for a coverage probability of %s %% is from %s to %s %s%s: %s %% lie below it, and as many above. " +
		"It is quoted since the law of propagation of uncertainty, with %s = %s %s, does not describe it well here: %s."
	return fmt.Sprintf(text, letter, s.Value, unit, gramsPerLitre(unit, " = %s", s.Value), what, p.centre(), symmetric, asked(a.CoverageProbability),
		s.Lower, s.Upper, unit, gramsPerLitre(unit, ", that is %s to %s", s.Lower, s.Upper), quantity.Number(quantity.Round(50*(1-a.CoverageProbability), 3)),
		symbolu, u, unit, disagreement(r))
}

// centre says what the value of a simulated result is, and how the simulated strengths scatter.
func (p *Paper) centre() string {
	r, few := p.result(), fewReadings(p.result())
	switch {
	case math.IsNaN(r.MonteCarlo.Mean):
		return "what the model gives with every influence at its best estimate. The strengths simulated (propagation of distributions, JCGM 101) have neither a mean nor a standard deviation" + few
	case math.IsNaN(r.Quoted.StandardUncertainty):
		return "the mean of the simulation (propagation of distributions, JCGM 101), which has no standard deviation" + few
	}
	return fmt.Sprintf("the mean of the simulation (propagation of distributions, JCGM 101), with the standard deviation %s %s", rounding.ThreeDigits(r.Quoted.StandardUncertainty), p.prep().Target.Unit.Name)
}

func relative(a *uncertainty.Analytic) string {
	if a.Value == 0 {
		return "without relation"
	}
	return quantity.Percent(a.Relative())
}

// factorFrom says which distribution a coverage factor is from.
func factorFrom(degreesOfFreedom float64) string {
	if math.IsInf(degreesOfFreedom, 1) || degreesOfFreedom > 1e4 {
		return "from the normal distribution"
	}
	return fmt.Sprintf("from the t-distribution for %s effective degrees of freedom", quantity.Decimal(degreesOfFreedom, 3))
}

func disagreement(r *route.Result) string {
	return fmt.Sprintf("an end of the interval differs by %s of %s, because of %s", quantity.Percent(r.CrossCheck.OfExpanded), symbolU, cause(&r.CrossCheck))
}

// method is the statement that can be quoted.
func (p *Paper) method() string {
	r, q := p.result(), p.prep()
	steps := clause.Each(r.Route.Steps, func(s route.Step) string { return verb.Doing(&s, q.Solute.Weighed(), q.Solvent.Name) })
	text := fmt.Sprintf("%s of a solution of %s in %s %s prepared by %s.", capital(volume(r.MadeML)), soluteNamed(q), q.Solvent.Name, p.told("is", "was"), quantity.Series(clause.Counted(steps), "and"))
	text += inWhichOrder(q, r.Route)
	text += p.methodResult()
	text += when(unnamed(q), fmt.Sprintf(" The strength is %s.", countedAs(q)))
	if groups := r.Analytic.ByGroup(); r.Analytic.StandardUncertainty > 0 && len(groups) > 0 {
		text += fmt.Sprintf(" The largest part of the uncertainty: %s (%s of the variance).", influence.Group(groups[0].Group), wholePercent(groups[0].Sum))
	}
	found := p.finding()
	return when(found != "", found+". ") + text
}

// methodResult says what was found by the method.
func (p *Paper) methodResult() string {
	r, s, chance := p.result(), state(p.result()), p.told("predicted to be", "found to be")
	unit := p.prep().Target.Unit.Name
	what := fmt.Sprintf(" Its %s is %s %s = ", quantities[unit], chance, inline.Symbol(Letter(p.prep())))
	if s.GiveOrTake == "" {
		from := either(math.IsNaN(r.MonteCarlo.Mean), "the model with every influence at its best estimate", "their mean")
		return what + fmt.Sprintf("%s %s%s, between %s and %s %s with a probability of %s %% (%s of %s simulated batches after JCGM 101, and %s).",
			s.Value, unit, gramsPerLitre(unit, " = %s", s.Value), s.Lower, s.Upper, unit, asked(r.Analytic.CoverageProbability), symmetric, quantity.Grouped(r.MonteCarlo.Trials), from)
	}
	_, k := r.Analytic.Factors()
	return what + fmt.Sprintf("(%s ± %s) %s%s (expanded uncertainty, %s = %s, about %s %%), evaluated after JCGM 100 and checked by %s simulated batches after JCGM 101.",
		s.Value, s.GiveOrTake, unit, gramsPerLitre(unit, " = (%s ± %s)", s.Value, s.GiveOrTake), symbolk, k, asked(r.Analytic.CoverageProbability), quantity.Grouped(r.MonteCarlo.Trials))
}

// inWhichOrder says what whoever repeats it puts first.
func inWhichOrder(q *route.Prep, r *route.Route) string {
	var refused *route.CannotError
	if errors.As(q.CheckOrder(r), &refused) {
		return " It is not to be repeated as it stands, since solvent cannot go first."
	}
	orders, _ := q.Orders(r) // it was evaluated, so it has them
	for i := range orders {
		if isTurned(orderOf(orders, i)) {
			return fmt.Sprintf(" When it is repeated, %s goes in first, and what is dissolved or diluted into it.", q.Solvent.Name)
		}
	}
	return ""
}

// instrumentRows are the instruments of the route, each once: its name, what it measures
// and how finely, class and standard, limit of error, and how far that can be trusted.
func (p *Paper) instrumentRows() (rows [][]string) {
	p.firstUses(func(name string, s *route.Step) {
		rows = append(rows, kits.Row(name, s.Balance, s.Measure))
	})
	return rows
}
