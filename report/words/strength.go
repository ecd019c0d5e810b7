package words

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"minim/equipment/quantity"
	"minim/report/words/influence"
	"minim/uncertainty"
	"minim/uncertainty/rounding"
	"minim/uncertainty/route"
)

// stated is a strength as it is printed.
type stated struct {
	// Value, and what it may be off by: "0.0020". GiveOrTake is empty when the
	// simulated interval is quoted instead.
	Value, GiveOrTake string
	// Lower and Upper are the ends of the interval that is quoted.
	Lower, Upper string
}

// state rounds a result: value ± U, or the mean of the simulation with both ends of
// its interval when that is quoted.
func state(r *route.Result) stated { return rounded(&r.Analytic, r.Quoted) }

// rounded is a strength as it is printed with the interval that is quoted.
func rounded(a *uncertainty.Analytic, q uncertainty.Quoted) stated {
	half := (q.Upper - q.Lower) / 2
	var s stated
	s.Lower, _ = rounding.Expanded(q.Lower, half)
	s.Upper, _ = rounding.Expanded(q.Upper, half)
	value, u := rounding.Expanded(a.Value, a.ExpandedUncertainty)
	switch s.Value = value; {
	case q.Simulated:
		s.Value, _ = rounding.Expanded(q.Value, half) // to the digits of its own interval
		return s
	case a.ExpandedUncertainty == 0:
		s.Value = quantity.Number(a.Value)
	}
	s.GiveOrTake = u
	return s
}

// sentence is "0.0393 % w/v, give or take 0.0020".
func (s stated) sentence(unit string) string {
	return either(s.GiveOrTake == "",
		fmt.Sprintf("%s %s, between %s and %s", s.Value, unit, s.Lower, s.Upper),
		fmt.Sprintf("%s %s, give or take %s", s.Value, unit, s.GiveOrTake))
}

// spread is "0.0020", or "0.037 to 0.041".
func (s stated) spread() string {
	return either(s.GiveOrTake == "", s.Lower+" to "+s.Upper, s.GiveOrTake)
}

// figures are those of a result as they are printed.
type figures struct {
	stated
	// Spread is "0.0020", or "0.037 to 0.041", and Relative half of that interval in per cent of the
	// strength.
	Spread, Relative string
	// Sentence is "0.0393 % w/v, give or take 0.0020".
	Sentence string
	// Inside is the chance in a hundred, empty without a tolerance, and HoldsWithin the
	// half-width round the target that holds the strength with the coverage probability.
	Inside, HoldsWithin            string
	Spoilt, Made, LeftOver, Solute string
}

// Shown are the figures of a result that is possible.
func Shown(p *route.Prep, r *route.Result) figures {
	s := state(r)
	f := figures{
		stated: s, Spread: s.spread(), Relative: quantity.Percent(r.GiveOrTake()),
		Sentence: s.sentence(p.Target.Unit.Name), HoldsWithin: quantity.Percent(r.HoldsWithin), Spoilt: spoiltBy(r),
		Made: volume(r.MadeML), LeftOver: volume(r.LeftOverML), Solute: soluteTaken(p, r),
	}
	if len(r.Inside) > 0 {
		f.Inside = chanceOf(p, r)
	}
	return f
}

// insideOr is the chance of a result in a hundred, or what it holds within where there is no
// tolerance.
func insideOr(p *route.Prep, r *route.Result) string {
	return either(len(r.Inside) == 0, quantity.Percent(r.HoldsWithin), chanceOf(p, r))
}

// insideIn is "inside 97.0 in 100", with a close call.
func insideIn(p *route.Prep, r *route.Result) string {
	return "inside " + chanceOf(p, r) + " in 100" + CloseCall(p, r)
}

// CloseCall says in brackets that a chance is so near to what is asked for that the simulation
// cannot tell the two apart: by less than two of its standard errors. It is said wherever a verdict
// is; "" where the simulation tells.
func CloseCall(p *route.Prep, r *route.Result) string {
	if len(r.Inside) == 0 || r.MonteCarlo.Trials == 0 || math.Abs(r.Chance()-p.LeastChance) > 2*r.Inside[0].Error {
		return ""
	}
	return fmt.Sprintf(" (so near to %s that %s simulated batches cannot tell: other ones may decide otherwise)", asked(p.LeastChance), quantity.Grouped(r.MonteCarlo.Trials))
}

// chanceOf is the chance of a result to be inside the first tolerance, in a hundred.
func chanceOf(p *route.Prep, r *route.Result) string { return inHundred(r.Chance(), p.LeastChance) }

// inHundred prints a chance as so many in a hundred, with one decimal, never as
// certain, and never so rounded that it seems to reach the least chance that is
// asked for when it does not: then it has two decimals, rounded down.
func inHundred(p, least float64) string {
	tenths := math.Round(1000 * p)
	switch {
	case p < least && (tenths >= 1000*least || p > 0.999):
		return strconv.FormatFloat(math.Floor(1e4*p)/100, 'f', 2, 64)
	case p > 0.999:
		return "over 99.9"
	case p < 0.001:
		return "under 0.1"
	}
	return strconv.FormatFloat(tenths/10, 'f', 1, 64)
}

// asked prints a probability that was asked for, in a hundred: 95, 99.5.
func asked(p float64) string { return quantity.Number(100 * p) }

// Share prints a share of a variance in whole percent, which may be negative
// under correlation.
func Share(x float64) string {
	return either(x != 0 && math.Abs(x) < 0.01, "under 1 %", wholePercent(x))
}

// wholePercent prints a share of a variance.
func wholePercent(x float64) string {
	return either(x >= 0.995 && x < 1, "over 99 %", strconv.FormatFloat(100*x, 'f', 0, 64)+" %")
}

// Wanted is "15 mL of 0.060 % w/v dye in ethanol". Where the strength counts a substance
// that has no name of its own, it says which.
func Wanted(p *route.Prep) string {
	return fmt.Sprintf("%s of %s", quantity.Millilitres(p.Volume), p.Target.Text) +
		either(unnamed(p), fmt.Sprintf(" in %s, %s", p.Solvent.Name, countedAs(p)), " "+solution(p))
}

// Within is "within 8 % of target (0.0368 to 0.0432)".
func Within(t route.Tolerance) string {
	if t.Stated {
		return t.Text
	}
	lower, upper := quantity.Ends(t.Limits.Lower, t.Limits.Upper)
	return fmt.Sprintf("within %s (%s to %s)", t.Text, lower, upper)
}

// toleranceIn is that with the unit of the limits, as papers have it.
func toleranceIn(p *route.Prep, t route.Tolerance) string {
	return either(t.Stated, t.Text, strings.TrimSuffix(Within(t), ")")+" "+p.Target.Unit.Name+")")
}

// insideWords is "inside", or the limits where they were stated one by one.
func insideWords(t route.Tolerance) string { return either(t.Stated, t.Text, "inside") }

// spoilers names the largest groups of influences with their shares of the
// variance: at most three, and none under 10 % after the first.
func spoilers(r *route.Result) string {
	var parts []string
	for i, g := range r.Analytic.ByGroup() {
		if i == 3 || i > 0 && g.Sum < 0.1 || g.Sum == 0 {
			break
		}
		parts = append(parts, fmt.Sprintf("%s (%s)", influence.Group(g.Group), wholePercent(g.Sum)))
	}
	return either(len(parts) == 0, "nothing that is counted", strings.Join(parts, ", "))
}

// closeSentence is a close call as a sentence.
func closeSentence(p *route.Prep, r *route.Result) string {
	text := strings.Trim(CloseCall(p, r), " ()")
	return when(text != "", " It is "+text+".")
}
