package words

import (
	"math"
	"strings"

	"minim/equipment/quantity"
	"minim/report/page"
	"minim/report/words/influence"
	"minim/uncertainty"
	"minim/uncertainty/rounding"
)

// Line words a line of a budget: its standard uncertainty, and its share of the variance.
func Line(l *uncertainty.Contribution) (u, share string) {
	return strings.TrimSpace(rounding.ThreeDigits(l.StandardUncertainty) + " " + l.Unit), fineShare(l.Share)
}

// fineShare prints a share of a variance with two significant digits.
func fineShare(x float64) string {
	return either(x != 0 && math.Abs(x) < 1e-4, "under 0.01 %", quantity.Percent(x))
}

// budgetCells of a line are its name, owner, marks (shared by several uses, assumed),
// standard uncertainty and share.
func budgetCells(l *uncertainty.Contribution) []string {
	var marks clauses
	marks.Add(l.Uses > 1, "shared")
	marks.Add(l.Assumed && l.AssumedPart == 0, "assumed")
	marks.Add(l.Assumed && l.AssumedPart > 0, "assumed in part, %s", wholePercent(l.AssumedPart))
	u, share := Line(l)
	return []string{influence.Name(&l.Influence), influence.Owner(l.Owner), strings.Join(marks, ", "), u, share}
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

// budget says what makes the result uncertain, and has the model that it was worked out by.
func (p *Paper) budget() []page.Block {
	r := p.result()
	if r.Analytic.StandardUncertainty == 0 {
		return append(section("What makes it uncertain", prose(nothingCounted)), p.model()...)
	}
	list := section("What makes it uncertain", prose("The largest shares of the variance: "+spoilers(r)+"."))
	if text := shifts(r); text != "" {
		list = append(list, prose("Known effects move the strength from what the marks alone would give, and the result is corrected for them: "+text+"."))
	}
	return append(list, p.model()...)
}
