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
)

// Line words a line of a budget: its standard uncertainty, and its share of the variance.
func Line(l *uncertainty.Contribution) (u, share string) {
	return strings.TrimSpace(uncertainty.ThreeDigits(l.StandardUncertainty) + " " + l.Unit), fineShare(l.Share)
}

// fineShare prints a share of a variance with two significant digits.
func fineShare(x float64) string {
	return either(x != 0 && math.Abs(x) < 1e-4, "under 0.01 %", quantity.Percent(x))
}

// budgetCells of a line are its name, owner, marks (shared by several uses, assumed) and
// standard uncertainty, what else is said, and its share.
func budgetCells(l *uncertainty.Contribution, besides ...string) []string {
	var marks clauses
	marks.Add(l.Uses > 1, "shared")
	marks.Add(l.Assumed && l.AssumedPart == 0, "assumed")
	marks.Add(l.Assumed && l.AssumedPart > 0, "assumed in part, %s", wholePercent(l.AssumedPart))
	u, share := Line(l)
	return slices.Concat([]string{influence.Name(&l.Influence), influence.Owner(l.Owner), strings.Join(marks, ", "), u}, besides, []string{share})
}

// nothingCounted is said of a budget without a line.
const nothingCounted = "Nothing that is counted."

// budgetTable has the influences, the largest first.
func budgetTable(budget []uncertainty.Contribution) page.Block {
	if len(budget) == 0 {
		return prose(nothingCounted)
	}
	t := &page.Table{Head: []string{"influence", "owner", "marked", "standard uncertainty", "share of the variance"}, Numbers: 3}
	for i := range budget {
		t.Rows = append(t.Rows, page.Row{Cells: budgetCells(&budget[i])})
	}
	return t
}

// mostLines of a budget that are listed on paper; what is below them adds up to little.
const mostLines = 15

// budget has the table of the influences, the largest first.
func (p *Paper) budget() []page.Block {
	r := p.result()
	lines := r.Analytic.Budget
	if r.Analytic.StandardUncertainty == 0 {
		return section("What makes it uncertain", prose(nothingCounted))
	}
	t := &page.Table{Caption: "Uncertainty budget: contributions to the variance of the strength", Numbers: 3,
		Head: []string{"influence", "owner", "marked", "standard uncertainty", "contribution to u / " + p.prep().Target.Unit.Name, "share"}}
	rest := 0.0
	for i := range lines {
		switch line := &lines[i]; {
		case math.Abs(line.Contribution) <= 1e-9*r.Analytic.StandardUncertainty: // it cancels, or is exactly known
		case i >= mostLines:
			rest += line.Share
		default:
			t.Rows = append(t.Rows, page.Row{Cells: budgetCells(line, signed(line.Contribution))})
		}
	}
	if n := len(lines) - mostLines; n > 0 {
		t.Rows = append(t.Rows, page.Row{Cells: []string{fmt.Sprintf("%d others together", n), "", "", "", "", fineShare(rest)}})
	}
	list := section("What makes it uncertain", prose("The largest contributions come from "+spoilers(r)+" of the variance."), t)
	if text := shifts(r); text != "" {
		list = append(list, prose("Known effects that shift the strength, for which it is corrected: "+text+"."))
	}
	if text := restsOn(r, "expanded uncertainty"); text != "" {
		list = append(list, prose(capital(text)+"."))
	}
	return list
}

// signed prints three digits with a sign.
func signed(x float64) string { return uncertainty.ThreeDigits(x) }
