package words

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"minim/equipment/quantity"
	"minim/report/page"
	"minim/report/words/influence"
	"minim/uncertainty"
	"minim/uncertainty/route"
)

// titled is "Toning dye (invented)", empty without a title.
func titled(p *route.Prep) string {
	return either(p.Title == "" || p.Note == "", p.Title, p.Title+" ("+p.Note+")")
}

func wantedWithin(p *route.Prep) string {
	if len(p.Tolerances) == 0 {
		return Wanted(p)
	}
	return Wanted(p) + ", " + tolerance(p.Tolerances[0])
}

// fact is something to be said of the route to use.
type fact = page.Fact

// facts say what the route to use gives.
func facts(c *route.Comparison) []fact {
	r := &c.Results[c.Verdict.Use]
	return slices.Concat(strengthFacts(c, r), said(fact{"Aim", aim(c.Prep, r)}, fact{"Shifted", shifts(r)}, fact{"Inside", chance(c, r)}), rest(c, r, fact{"Makes", amounts(c.Prep, r, "takes")}))
}

// strengthFacts say what the strength is, and warn where that means little.
func strengthFacts(c *route.Comparison, r *route.Result) (list []fact) {
	if !r.Informative {
		list = append(list, fact{"Mind", r.Uninformative.String()})
	}
	list = append(list, fact{"Strength", state(r).sentence(c.Prep.Target.Unit.Name) + " (" + coverage(c, r) + ")"})
	return append(list, besideFacts(r)...)
}

// rest says what spoils a strength, what is made, and how far it was checked.
func rest(c *route.Comparison, r *route.Result, makes fact) []fact {
	return append(countedFacts(c.Prep, r), said(fact{"Spoilt by", spoiltBy(r)}, makes,
		fact{"Checked", checked(c, r)}, fact{"Curved", curved(r)}, fact{"Assumed", restsOn(r, "give or take")})...)
}

// restsOn says how much of the variance rests on what is assumed, and what errors of glass
// that are not triangular would make of it.
func restsOn(r *route.Result, spread string) string {
	var assumed clauses
	assumed.Put("", assumedShare(r))
	more := r.Analytic.MoreIfRectangular()
	if more <= 0 {
		return strings.Join(assumed, "; ")
	}
	was, is := r.Analytic.ExpandedUncertainty, r.Analytic.IfRectangular()
	_, text := uncertainty.RoundExpanded(0, is)
	if r.Quoted.Simulated {
		was, spread = ofSimulation(r)
		is = math.Sqrt(float64(was*was) + more*r.Analytic.StandardUncertainty*r.Analytic.StandardUncertainty)
		text = uncertainty.ThreeDigits(is)
	}
	assumed.Add(is/was-1 >= 0.005, "errors of glass that are rectangular within their limits, not triangular, would make the %s %s, %s more", spread, text, wholePercent(is/was-1))
	return strings.Join(assumed, "; ")
}

// assumedShare is "30 % of its variance rests on assumed values", of the variance of the
// simulation where that is quoted and has one; "" where none does.
func assumedShare(r *route.Result) string {
	share, of := r.AssumedShare, "its variance"
	if r.Quoted.Simulated {
		deviation, _ := ofSimulation(r)
		u := r.Analytic.StandardUncertainty / deviation
		share, of = min(1, share*u*u), either(math.IsNaN(r.Quoted.StandardUncertainty), "its variance to first order", "the variance of the simulation")
	}
	return when(share >= 0.005, fmt.Sprintf("%s of %s rests on assumed values", wholePercent(share), of))
}

// ofSimulation is what is known to spread where the simulated interval is quoted: the standard
// deviation of the simulation, or the standard uncertainty to first order where that has none.
func ofSimulation(r *route.Result) (deviation float64, name string) {
	if deviation = r.Quoted.StandardUncertainty; deviation > 0 {
		return deviation, "standard deviation of the simulation"
	}
	return r.Analytic.StandardUncertainty, "standard uncertainty to first order"
}

// amounts say what a route makes, leaves over and takes, or took.
func amounts(p *route.Prep, r *route.Result, takes string) string {
	return fmt.Sprintf("%s; left over in all %s; %s %s", volume(r.MadeML), volume(r.LeftOverML), takes, soluteTaken(p, r))
}

// spoiltBy says of what the shares of the spoilers are.
func spoiltBy(r *route.Result) string {
	return spoilers(r) + when(r.Analytic.StandardUncertainty != 0, " of the variance") + byFewReadings(r)
}

// byFewReadings says of what is known from few readings, and is not what has most of the variance,
// that it makes most of the interval; "" where nothing does.
func byFewReadings(r *route.Result) string {
	groups := r.Analytic.ByGroup()
	for i := range r.Analytic.Budget {
		line := &r.Analytic.Budget[i]
		if half := r.Analytic.ByReadings(line.Set); line.DegreesOfFreedom <= 2 && half > (r.Quoted.Upper-r.Quoted.Lower)/4 && line.Group != groups[0].Group {
			return fmt.Sprintf("; but most of the give or take comes from the %s, known from %s", line.Set.Owner.Name, count(int(line.DegreesOfFreedom)+1, "reading"))
		}
	}
	return ""
}

// coverage says with what probability the interval holds the strength.
func coverage(c *route.Comparison, r *route.Result) string {
	_, k := uncertainty.Factors(&r.Analytic)
	return either(r.Quoted.Simulated,
		fmt.Sprintf("mean and %s of the simulation, about %s %%", symmetric, asked(c.Settings.Coverage)),
		fmt.Sprintf("k = %s, about %s %%", k, asked(c.Settings.Coverage)))
}

// shifts names what moves the expected strength away from the aim, in per cent
// of it, where it is 0.1 % or more, and what bores that are not measured leave open of it.
func shifts(r *route.Result) string {
	var parts clauses
	menisci := 0.0
	for _, s := range r.Analytic.Shifts() {
		share := s.Sum / r.Analytic.Value
		parts.Add(math.Abs(share) >= 0.001, "by %s %+.1f %%", influence.Group(s.Group), 100*share)
		if s.Group.Kind == uncertainty.Bench {
			menisci += share
		}
	}
	open := r.ByBores() / math.Abs(r.Analytic.Value)
	text := clauses{strings.Join(parts, ", ")}
	text.Add(open >= 0.0005, "bores that are not measured leave the meniscus between %+.1f and %+.1f %%", 100*(menisci-open), 100*(menisci+open))
	return strings.TrimPrefix(strings.Join(text, "; "), "; ")
}

// aim compares what the steps are meant to give with the target.
func aim(p *route.Prep, r *route.Result) string {
	off := aside(r.Intended/p.Target.Value-1, 0.0005)
	return "the steps aim at " + quantity.Decimal(r.Intended, 3) + ", " + when(off != "", off+" ") + "the target"
}

// aside is "3 % above", or below, a difference that is more than what counts; "" else.
func aside(difference, counts float64) string {
	return when(math.Abs(difference) > counts, quantity.Percent(math.Abs(difference))+either(difference > 0, " above", " below"))
}

func chance(c *route.Comparison, r *route.Result) string {
	if len(r.Inside) == 0 {
		return fmt.Sprintf("within %s of the target with a chance of %s in 100", quantity.Percent(r.HoldsWithin), asked(c.Settings.Coverage))
	}
	return fmt.Sprintf("predicted chance of being %s: %s in 100", insideWords(c.Prep.Tolerances[0]), chanceOf(c.Prep, r)) + closeCall(c.Prep, r)
}

func checked(c *route.Comparison, r *route.Result) string {
	text := fmt.Sprintf("by %s simulated batches (seed %d%s): ", quantity.Grouped(r.MonteCarlo.Trials), r.MonteCarlo.Seed, reached(c, r))
	within := quantity.Number(r.CrossCheck.Tolerance)
	switch {
	case r.CrossCheck.Cause == "" && r.CrossCheck.SameU():
		return text + "agrees with the give or take within " + within
	case r.CrossCheck.Cause == "":
		besides := when(!math.IsNaN(r.CrossCheck.DU), "; its standard deviation is not the standard uncertainty")
		return text + "its ends are those of the give or take within " + within + besides + withoutDeviation(r)
	}
	text += fmt.Sprintf("an end differs by %s of the give or take, because of %s", quantity.Percent(r.CrossCheck.OfExpanded), cause(&r.CrossCheck))
	return text + when(r.Quoted.Simulated, "; the simulated interval is quoted") + withoutDeviation(r)
}

// withoutDeviation says why the simulated strengths have no standard deviation, where they
// have none.
func withoutDeviation(r *route.Result) string {
	if !math.IsNaN(r.MonteCarlo.StandardDeviation) {
		return ""
	}
	for i := range r.Analytic.Budget {
		line := &r.Analytic.Budget[i]
		if n := line.DegreesOfFreedom + 1; n > 1 && n <= 3 && line.Contribution != 0 {
			return fmt.Sprintf("; %.0f readings of the %s give an interval, and the simulated strengths no standard deviation", n, line.Set.Owner.Name)
		}
	}
	return "; the simulated strengths have an interval, and no standard deviation"
}

// reached says how many digits the simulation was to reach and has reached.
func reached(c *route.Comparison, r *route.Result) string {
	asked := c.Settings.Digits
	if asked == 0 {
		return ""
	}
	text := fmt.Sprintf("; good to %s of its spread", count(min(asked, r.MonteCarlo.Digits), "digit"))
	return text + when(r.MonteCarlo.AtCeiling, ", stopped at the most that may be simulated")
}

func count(n int, noun string) string {
	switch n {
	case 0:
		return "no " + noun
	case 1:
		return "1 " + noun
	}
	if stem, ok := strings.CutSuffix(noun, "y"); ok {
		return fmt.Sprintf("%d %sies", n, stem)
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// cause is "shape (0.1 g scale)", or with two influences for curvature.
func cause(c *uncertainty.CrossCheck) string {
	why := strings.ReplaceAll(string(c.Cause), "-", " ")
	switch first, with := influence.Name(c.Influence), influence.Name(c.With); {
	case first == "":
		return why
	case with == "" || with == first:
		return fmt.Sprintf("%s (%s)", why, first)
	default:
		return fmt.Sprintf("%s (%s together with %s)", why, first, with)
	}
}

// curved says by how much the terms of second order change the uncertainty,
// where that matters.
func curved(r *route.Result) string {
	second, u := r.SecondOrder, r.Analytic.StandardUncertainty
	switch {
	case !second.Matters(u):
		return ""
	case math.IsNaN(second.StandardUncertainty) || u == 0:
		return "the strength bends so much with its influences that only the simulation counts"
	}
	return fmt.Sprintf("the strength is not a straight line in its influences, which makes the standard uncertainty %s %s (terms of second order)",
		quantity.Percent(math.Abs(second.StandardUncertainty/u-1)), either(second.StandardUncertainty > u, "larger", "smaller"))
}

func volume(mL float64) string { return quantity.Millilitres(quantity.Round(mL, 3)) }

func grams(g float64) string { return quantity.Grams(quantity.Round(g, 3)) }
