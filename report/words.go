package report

import (
	"fmt"
	"strconv"
	"strings"

	"minim/equipment"
	"minim/uncertainty"
	"minim/uncertainty/route"
)

// stated is a strength as it is printed: the value, and what it may be off by
// or the interval that it lies in.
type stated struct{ value, giveOrTake string }

// state rounds a result: value ± U, or the value with both ends of the
// simulated interval when that is quoted.
func state(r *route.Result) stated {
	value, u := uncertainty.RoundExpanded(r.Analytic.Value, r.Analytic.ExpandedUncertainty)
	if !r.Quoted.Simulated {
		return stated{value, u}
	}
	half := (r.Quoted.Upper - r.Quoted.Lower) / 2
	low, _ := uncertainty.RoundExpanded(r.Quoted.Lower, half)
	high, _ := uncertainty.RoundExpanded(r.Quoted.Upper, half)
	return stated{value, low + " to " + high}
}

// sentence is "0.0393 % w/v, give or take 0.0020".
func (s stated) sentence(unit string) string {
	if strings.Contains(s.giveOrTake, " to ") {
		return fmt.Sprintf("%s %s, between %s", s.value, unit, strings.Replace(s.giveOrTake, " to ", " and ", 1))
	}
	return fmt.Sprintf("%s %s, give or take %s", s.value, unit, s.giveOrTake)
}

// inHundred prints a chance as so many in a hundred, with one decimal, and
// never as certain.
func inHundred(p float64) string {
	switch {
	case p > 0.999:
		return "over 99.9"
	case p < 0.001:
		return "under 0.1"
	default:
		return strconv.FormatFloat(100*p, 'f', 1, 64)
	}
}

// plainHundred prints a probability that was asked for: 95, 99.5.
func plainHundred(p float64) string { return limit(100 * p) }

// percent prints a fraction with two significant digits.
func percent(x float64) string { return limit(roundSignificant(100*x, 2)) + " %" }

// wholePercent prints a share of a variance.
func wholePercent(x float64) string { return strconv.FormatFloat(100*x, 'f', 0, 64) + " %" }

// wanted is "15 mL of 0.04 % w/v dye in ethanol".
func wanted(p *route.Prep) string {
	return fmt.Sprintf("%s of %s %s in %s", equipment.Millilitres(p.Volume), p.Target.Text, p.Solute.Name, p.Solvent.Name)
}

// tolerance is "within 8 % of target (0.0368 to 0.0432)".
func tolerance(t route.Tolerance) string {
	if t.Stated() {
		return t.Text
	}
	return fmt.Sprintf("within %s (%s to %s)", t.Text, limit(t.Limits.Lower), limit(t.Limits.Upper))
}

// insideWords is "inside", or the limits where they were stated one by one.
func insideWords(t route.Tolerance) string {
	if t.Stated() {
		return t.Text
	}
	return "inside"
}

func limit(x float64) string { return strconv.FormatFloat(x, 'g', 6, 64) }

// spoilers names the largest groups of influences with their shares of the
// variance: at most three, and none under 10 % after the first.
func spoilers(r *route.Result) string {
	var parts []string
	for i, g := range r.Analytic.ByGroup() {
		if i == 3 || i > 0 && g.Share < 0.1 || g.Share == 0 {
			break
		}
		parts = append(parts, fmt.Sprintf("%s (%s)", g.Group, wholePercent(g.Share)))
	}
	if len(parts) == 0 {
		return "nothing that is counted"
	}
	return strings.Join(parts, ", ")
}
