package glance

import (
	"fmt"
	"strings"

	"minim/equipment/quantity"
	"minim/report/page"
	"minim/report/words"
	"minim/uncertainty/policy"
	"minim/uncertainty/route"
)

// reasons in a few words why a route fell behind the one to use, by the rule by which it did; those with
// figures are worded by [why].
var reasons = map[policy.Rule]string{
	policy.Use:        "makes or says too little",
	policy.Doubt:      "in doubt",
	policy.Meeting:    "less sure",
	policy.Chance:     "less sure",
	policy.Surer:      "less sure",
	policy.Holding:    "holds less closely",
	policy.Misreading: "outside if misread by a step",
	policy.LowOnScale: "reads low on a scale",
	policy.BothWays:   "one piece measures both",
	policy.TooLarge:   "larger piece than needed",
	policy.Roundness:  "readings less round",
	policy.Solute:     "takes more solute",
	policy.Name:       "as good",
}

// why says in a few words why a route is not the one to use; "" of that one.
func why(c *route.Comparison, i int) string {
	r, used := &c.Results[i], &c.Results[c.Verdict.Use]
	by := words.FellBy(c, r)
	switch {
	case i == c.Verdict.Use:
		return ""
	case !r.Enough(c.Prep.Volume):
		return "makes only " + volume(r.MadeML)
	case r.Elsewhere != nil:
		return words.ComesOut(r.Elsewhere)
	case len(r.Inside) > 0 && r.Chance() < c.Prep.LeastChance:
		return "under the " + asked(c.Prep) + " asked for"
	case by == policy.None:
		by = ranked(c.Prep, used, r)
	}
	switch by {
	case policy.HalfRisk:
		return "under " + quantity.Number(100*c.Prep.Ask().Halved()) + ", half the risk"
	case policy.Operations:
		return operations(r, used)
	case policy.LeftOver:
		return "leaves more over"
	}
	return reasons[by]
}

// ranked is the rule by which one of two comes first where another was chosen by name; none where
// that would be the other.
func ranked(p *route.Prep, used, r *route.Result) policy.Rule {
	if order, by := p.Rank(used, r); order < 0 {
		return by
	}
	return policy.None
}

func operations(r, used *route.Result) string {
	if r.Operations < used.Operations {
		return "leaves more over"
	}
	return fmt.Sprintf("%d measurements, not %d", r.Operations, used.Operations)
}

// mostReason is how many characters a reason that runs across has.
const mostReason = 52

// cells of a route in a table, after its name, with the reason in the last column or, where there is
// nothing to tabulate, across.
func cells(c *route.Comparison, i int, figures []string) []string {
	r := &c.Results[i]
	switch {
	case r.MayNotBeUsed():
		return []string{words.NotPossible(r)}
	case !r.Possible:
		return []string{shortly("not possible: " + r.Reason.String())}
	case !r.Informative:
		text, _, _ := strings.Cut(r.Uninformative.String(), ": ")
		return []string{shortly(text)}
	}
	return append(figures, why(c, i))
}

// shortly is the first part of a reason, cut at a word.
func shortly(text string) string {
	first, _, _ := strings.Cut(text, "; ")
	return page.Shorten(first, mostReason)
}

// insideHead heads the column of chances, insideCell is one: "99.7 in 100".
func insideHead(p *route.Prep) string {
	if len(p.Tolerances) == 0 {
		return "holds within"
	}
	return "inside"
}

func insideCell(p *route.Prep, r *route.Result) string {
	f := words.Shown(p, r)
	if len(p.Tolerances) == 0 {
		return f.HoldsWithin
	}
	return f.Inside + " in 100"
}
