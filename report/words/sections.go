package words

import (
	"strings"

	"minim/equipment"
	"minim/report/page"
	"minim/uncertainty"
	"minim/uncertainty/route"
)

// First say what comes before everything else.
func First(c *route.Comparison) (list []page.Block) {
	for _, line := range firstLines(c) {
		list = append(list, page.Paragraph{Label: "First", Text: line, At: 8})
	}
	return list
}

// Used show the route to use as numbered steps, and what it gives.
func Used(c *route.Comparison, facts []page.Fact) []page.Block {
	r := &c.Results[c.Verdict.Use]
	return []page.Block{
		page.Heading{Label: verdictWord(c), Text: r.Route.Name},
		page.Steps{Items: Instructions(c.Prep, r.Route)},
		page.Gap{},
		page.Facts{List: facts, At: 14, Indent: 2},
	}
}

// Spoils is the budget of a route, which the screen leaves out.
func Spoils(title string, budget []uncertainty.Contribution) page.Block {
	return page.NotText(page.Fold{Title: title, Blocks: []page.Block{budgetTable(budget)}})
}

// budgetTable has the influences, the largest first.
func budgetTable(budget []uncertainty.Contribution) page.Block {
	if len(budget) == 0 {
		return page.Paragraph{Text: "Nothing that is counted."}
	}
	t := &page.Table{Head: []string{"influence", "owner", "marked", "standard uncertainty", "share of the variance"}, Numbers: 3}
	for i := range budget {
		line := &budget[i]
		u := strings.TrimSpace(TwoDigits(line.StandardUncertainty) + " " + line.Unit)
		t.Rows = append(t.Rows, page.Row{Cells: []string{line.Name, line.Owner, marks(line), u, FineShare(line.Share)}})
	}
	return t
}

// Footing say what the figures rest on, and cautions.
func Footing(notes *equipment.Notes, cautions []string) []page.Block {
	list := []page.Block{page.Gap{}}
	for _, g := range noteGrounds(notes) {
		list = append(list, page.Notes{Label: g.label, Items: g.list, At: 13})
	}
	return append(list, page.Notes{Label: "Cautions", Items: cautions, At: 13, Join: " "})
}
