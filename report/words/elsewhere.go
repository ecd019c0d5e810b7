package words

import (
	"fmt"
	"math"
	"slices"

	"minim/equipment/quantity"
	"minim/report/words/clause"
	"minim/report/words/verb"
	"minim/uncertainty/route"
)

// mostFirst is how many routes that aim elsewhere are said before everything else.
const mostFirst = 3

// first are the routes that aim elsewhere and are said before everything else: the one to
// use if it is one, and then others that a reading would mend. More is how many others there are.
func first(c *route.Comparison) (list []*route.Result, more int) {
	for i := range c.Results {
		switch r := &c.Results[i]; {
		case r.Elsewhere == nil:
		case i == c.Verdict.Use:
			if gains(c.Prep, r) {
				list = append([]*route.Result{r}, list...)
			}
		case r.Elsewhere.Step > 0:
			list = append(list, r)
		default:
			more++
		}
	}
	n := min(mostFirst, len(list))
	return list[:n], more + len(list) - n
}

// gains reports whether a route that aims elsewhere is shown with another chance once it is brought to the target, or cannot
// be. Where it is not, the line of where its steps aim is enough: what is already as sure needs no other reading first.
func gains(p *route.Prep, r *route.Result) bool {
	return r.Elsewhere.Step == 0 || inHundred(r.Elsewhere.Chance, p.LeastChance) != chanceOf(p, r)
}

// FirstLines say which routes aim elsewhere, and what would bring them to the target.
func FirstLines(c *route.Comparison) []string {
	said, rest := first(c)
	lines := clause.Each(said, func(r *route.Result) string { return r.Route.Name + " " + elsewhereWords(c.Prep, r) })
	if rest > 0 {
		lines = append(lines, fmt.Sprintf("%s %s elsewhere%s, see below", count(rest, "other route"), either(rest == 1, "aims", "aim"), when(len(said) > 0, " as well")))
	}
	return lines
}

// PlanFirst says before everything else that the plan of a batch aims elsewhere, as long as
// nothing of it is done; "" where it does not. What is done cannot be read otherwise.
func PlanFirst(b *Batch) string {
	r := &b.AsPlanned
	if r.Elsewhere == nil || b.Any() || !gains(b.Plan, r) {
		return ""
	}
	return "the plan " + elsewhereWords(b.Plan, r)
}

// elsewhereWords say by how much a route aims off, and what would mend that.
func elsewhereWords(p *route.Prep, r *route.Result) string {
	e, unit, text := r.Elsewhere, p.Target.Unit.Name, ComesOut(r.Elsewhere)
	aims := fmt.Sprintf("its steps aim at %s %s, the target is %s", quantity.Decimal(r.Intended, 3), unit, p.Target.Text)
	if expected := quantity.Decimal(r.Analytic.Value, 3); expected != quantity.Decimal(r.Intended, 3) {
		aims = fmt.Sprintf("expected are %s %s where its steps aim at %s, the target is %s", expected, unit, quantity.Decimal(r.Intended, 3), p.Target.Text)
	}
	if e.Step == 0 {
		return fmt.Sprintf("%s: %s, and no other reading of a single step %sbrings it there on this bench%s", text, aims, when(e.Cut, "that was tried "), when(e.Cut, " (not all were)"))
	}
	return fmt.Sprintf("%s: %s (step %d); then it is inside %s in 100, as it stands %s (%s)", text, otherReading(r, e), e.Step,
		inHundred(e.Chance, p.LeastChance), chanceOf(p, r), aims)
}

// ComesOut is "comes out 2 % too weak".
func ComesOut(e *route.Elsewhere) string {
	return either(e.Off >= 1, fmt.Sprintf("comes out %s times as strong as is wanted", quantity.Decimal(1+e.Off, 2)),
		fmt.Sprintf("comes out %s too %s", quantity.Percent(math.Abs(e.Off)), either(e.Off < 0, "weak", "strong")))
}

// otherReading is "weigh 0.68 g instead of 0.60 g on the scale".
func otherReading(r *route.Result, e *route.Elsewhere) string {
	return verb.Short(&e.Amended, &r.Route.Steps[e.Step-1])
}

// whyNotHere is whyNot with what brings the route to the target, unless that was said
// before everything else.
func whyNotHere(c *route.Comparison, r *route.Result) string {
	if said, _ := first(c); slices.Contains(said, r) {
		return whyNot(c, r)
	}
	return whyNotAt(c, r)
}

// whyNotAt is whyNot with what brings the route to the target.
func whyNotAt(c *route.Comparison, r *route.Result) string { return broughtTo(c, r, whyNot(c, r)) }

// againstAt is the same for a report, which leaves out what it can do without.
func againstAt(c *route.Comparison, r *route.Result) string {
	return broughtTo(c, r, against(c, r, ""))
}

// broughtTo has what brings a route to the target before what is said of it.
func broughtTo(c *route.Comparison, r *route.Result, text string) string {
	if r.Elsewhere == nil {
		return text
	}
	return elsewhereWords(c.Prep, r) + "; " + text
}
