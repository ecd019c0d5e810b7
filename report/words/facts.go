package words

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"minim/equipment/quantity"
	"minim/report/page"
	"minim/report/words/beside"
	"minim/report/words/influence"
	"minim/uncertainty"
	"minim/uncertainty/portable"
	"minim/uncertainty/rounding"
	"minim/uncertainty/route"
)

// Titled is "Toning dye (invented)", empty without a title.
func Titled(p *route.Prep) string {
	return either(p.Title == "" || p.Note == "", p.Title, p.Title+" ("+p.Note+")")
}

func wantedWithin(p *route.Prep) string {
	if len(p.Tolerances) == 0 {
		return Wanted(p)
	}
	return Wanted(p) + ", " + Within(p.Tolerances[0])
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
	return append(list, beside.Facts(r)...)
}

// rest says what spoils a strength, what is made, and how far it was checked.
func rest(c *route.Comparison, r *route.Result, makes fact) []fact {
	return append(countedFacts(c.Prep, r), said(fact{"Spoilt by", spoiltBy(r)}, makes,
		fact{"Checked", checked(c, r, "give or take")}, fact{"Curved", curved(r)}, fact{"Assumed", restsOn(r, "give or take")})...)
}

// restsOn says how much of the variance rests on what is assumed, and what errors of glass
// that are not triangular would make of it.
func restsOn(r *route.Result, spread string) string {
	var parts clauses
	parts.Put("", assumedOf(&r.Analytic, &r.Quoted))
	more := r.Analytic.MoreIfRectangular()
	if more <= 0 {
		return strings.Join(parts, "; ")
	}
	was, is := r.Analytic.ExpandedUncertainty, r.Analytic.IfRectangular()
	_, text := rounding.Expanded(0, is)
	if r.Quoted.Simulated {
		was, spread = ofSimulation(&r.Analytic, &r.Quoted)
		is = math.Sqrt(float64(was*was) + float64(more*r.Analytic.StandardUncertainty*r.Analytic.StandardUncertainty))
		text = rounding.ThreeDigits(is)
	}
	parts.Add(is/was-1 >= 0.005, "errors of glass that are rectangular within their limits, not triangular, would make the %s %s, %s more", spread, text, wholePercent(is/was-1))
	return strings.Join(parts, "; ")
}

// assumedOf says how much of a variance rests on what is assumed, and on what is from memory, which
// may be the same; "" where nothing does. The variance is that of the simulation where that is
// quoted and has one.
func assumedOf(a *uncertainty.Analytic, q *uncertainty.Quoted) string {
	assumed, recalled, of := a.AssumedShare(), a.MemoryShare(), "the variance"
	if q.Simulated {
		deviation, _ := ofSimulation(a, q)
		u := a.StandardUncertainty / deviation
		assumed, recalled = min(1, assumed*u*u), min(1, recalled*u*u)
		of = either(math.IsNaN(q.StandardUncertainty), "the variance to first order", "the variance of the simulation")
	}
	switch {
	case assumed >= 0.005 && recalled >= 0.005:
		return fmt.Sprintf("%s of %s rests on assumed values, %s on figures from memory", wholePercent(assumed), of, wholePercent(recalled))
	case assumed >= 0.005:
		return fmt.Sprintf("%s of %s rests on assumed values", wholePercent(assumed), of)
	case recalled >= 0.005:
		return fmt.Sprintf("%s of %s rests on figures from memory", wholePercent(recalled), of)
	}
	return ""
}

// ofSimulation is what is known to spread where the simulated interval is quoted: the standard
// deviation of the simulation, or the standard uncertainty to first order where that has none.
func ofSimulation(a *uncertainty.Analytic, q *uncertainty.Quoted) (deviation float64, name string) {
	if deviation = q.StandardUncertainty; deviation > 0 {
		return deviation, "standard deviation of the simulation"
	}
	return a.StandardUncertainty, "standard uncertainty to first order"
}

// amounts say what a route makes, leaves over and takes, or took.
func amounts(p *route.Prep, r *route.Result, takes string) string {
	return fmt.Sprintf("%s; %s; %s %s", volume(r.MadeML), leftInAll(r), takes, soluteTaken(p, r))
}

// leftInAll says what is left over of all solutions.
func leftInAll(r *route.Result) string {
	return either(r.LeftOverML < 5e-7, "nothing left over", "left over in all "+volume(r.LeftOverML))
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
	_, k := r.Analytic.Factors()
	value := either(math.IsNaN(r.MonteCarlo.Mean), "the model at its best estimates, and the", "mean and")
	return either(r.Quoted.Simulated,
		fmt.Sprintf("%s %s of the simulation, about %s %%", value, symmetric, asked(c.Settings.Coverage)),
		fmt.Sprintf("k = %s, about %s %%", k, asked(c.Settings.Coverage)))
}

// shifts names what moves the expected strength away from the aim, in per cent
// of it, where it is 0.1 % or more, and what bores that are not measured leave open of it.
//
// Percentages are of what the marks alone would give, by first order, as those of what instruments err by.
func shifts(r *route.Result) string {
	var parts clauses
	menisci, marks := 0.0, byMarks(r)
	for _, s := range r.Analytic.Shifts() {
		share := s.Sum / marks
		parts.Add(math.Abs(share) >= 0.001, "by %s %+.1f %%", influence.Group(s.Group), 100*share)
		if s.Group.Kind == uncertainty.Bench {
			menisci += share
		}
	}
	open := r.ByBores() / math.Abs(marks)
	text := clauses{strings.Join(parts, ", ")}
	text.Add(open >= 0.0005, "bores that are not measured leave the meniscus between %+.1f and %+.1f %%", 100*(menisci-open), 100*(menisci+open))
	return strings.TrimPrefix(strings.Join(text, "; "), "; ")
}

// byMarks is the strength that the marks alone would give, or that with all shifts where they leave
// next to nothing of it.
func byMarks(r *route.Result) float64 {
	marks := r.Analytic.Value
	for _, s := range r.Analytic.Shifts() {
		marks -= s.Sum
	}
	if math.Abs(marks) < math.Abs(r.Analytic.Value)/2 {
		return r.Analytic.Value
	}
	return marks
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
	return fmt.Sprintf("predicted chance of being %s: %s in 100", insideWords(c.Prep.Tolerances[0]), chanceOf(c.Prep, r)) + CloseCall(c.Prep, r)
}

// checked says how far the simulation bears out what is called the spread here.
func checked(c *route.Comparison, r *route.Result, spread string) string {
	if r.MonteCarlo.ByLaw {
		return "not yet: the ends and chances are those of the linear part of the model, by its exact distribution"
	}
	text := fmt.Sprintf("by %s simulated batches (seed %d%s)%s: ", quantity.Grouped(r.MonteCarlo.Trials), r.MonteCarlo.Seed, reached(c, r), asSure(&r.MonteCarlo))
	within := quantity.Number(r.CrossCheck.Tolerance) + " " + c.Prep.Target.Unit.Name
	switch {
	case r.CrossCheck.Cause == "" && r.CrossCheck.SameU():
		return text + "agrees with the " + spread + " within " + within
	case r.CrossCheck.Cause == "":
		besides := when(!math.IsNaN(r.CrossCheck.DU), "; its standard deviation is not the standard uncertainty")
		return text + "its ends are those of the " + spread + " within " + within + besides + withoutDeviation(r)
	}
	text += fmt.Sprintf("an end differs by %s of the %s, because of %s", quantity.Percent(r.CrossCheck.OfExpanded), spread, cause(&r.CrossCheck))
	return text + when(r.Quoted.Simulated, "; the simulated interval is quoted") + withoutDeviation(r)
}

// withoutDeviation says what the simulated strengths do not have to be compared, and why.
func withoutDeviation(r *route.Result) string {
	switch {
	case math.IsNaN(r.MonteCarlo.Mean):
		return "; there is neither a mean nor a standard deviation to compare" + fewReadings(r)
	case math.IsNaN(r.MonteCarlo.StandardDeviation):
		return "; there is no standard deviation to compare" + fewReadings(r)
	}
	return ""
}

// fewReadings says which are too few for the simulated strengths to have a mean, or a standard
// deviation: t with one degree of freedom has neither, with two it has no standard deviation.
func fewReadings(r *route.Result) string {
	fewest := -1
	for i := range r.Analytic.Budget {
		line := &r.Analytic.Budget[i]
		if n := line.DegreesOfFreedom; n > 0 && n <= 2 && line.Contribution != 0 && (fewest < 0 || n < r.Analytic.Budget[fewest].DegreesOfFreedom) {
			fewest = i
		}
	}
	if fewest < 0 {
		return ""
	}
	line := &r.Analytic.Budget[fewest]
	return fmt.Sprintf(", since %s readings of the %s are too few for that", either(line.DegreesOfFreedom < 2, "two", "three"), line.Set.Owner.Name)
}

// asSure says as how many plain batches the ends of the interval are sure, where they are more.
func asSure(mc *uncertainty.MonteCarlo) string {
	const most = 1e9
	n := float64(mc.Trials) * mc.Sharper
	if mc.Sharper < 2 {
		return ""
	}
	step := math.Pow10(portable.Decade(n) - 1) // of two digits
	return ", as sure of the ends as by " + either(n > most, "over "+quantity.Grouped(most), quantity.Grouped(int(math.Floor(n/step)*step))) + " plain ones"
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

// causes in words.
var causes = map[uncertainty.Cause]string{
	"shape": "an influence that is not normal", "skew": "a lopsided influence", "few-readings": "few readings", "curvature": "a bend in the model",
}

// cause is "an influence that is not normal (0.1 g scale)", or with two influences for curvature.
func cause(c *uncertainty.CrossCheck) string {
	why := causes[c.Cause]
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
