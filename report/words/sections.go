package words

import (
	"strings"

	"minim/equipment"
	"minim/report/page"
	"minim/report/words/influence"
	"minim/uncertainty"
	"minim/uncertainty/route"
)

// Recommended says what comes before everything else, which route to use, and what it gives.
func Recommended(c *route.Comparison) []page.Block {
	return append(firstBlocks(c), useBlocks(c, facts(c))...)
}

// Routes are all routes, and how each stands to the other tolerances.
func Routes(c *route.Comparison) []page.Block {
	return []page.Block{page.Heading{Text: "All routes", Silent: true}, routeTable(c), page.Bullets{Items: alsoInside(c), Label: "  also:", At: 9}}
}

// lined is a section of lines with labels, or nothing where there are none.
func lined(title string, lines []page.Fact) []page.Block {
	if len(lines) == 0 {
		return nil
	}
	return []page.Block{page.Heading{Text: title}, page.Facts{List: lines, Indent: 2, Bare: true}}
}

// firstBlocks say what comes before everything else.
func firstBlocks(c *route.Comparison) (list []page.Block) {
	for _, line := range firstLines(c) {
		list = append(list, page.Paragraph{Label: "First", Text: line, At: 8})
	}
	return list
}

// useBlocks show the route to use as numbered steps, and what it gives.
func useBlocks(c *route.Comparison, facts []page.Fact) []page.Block {
	r := &c.Results[c.Verdict.Use]
	return []page.Block{
		page.Heading{Label: verdictWord(c), Text: r.Route.Name},
		page.Steps{Items: Instructions(c.Prep, r.Route)},
		page.Gap{},
		page.Facts{List: facts, At: 14, Indent: 2},
	}
}

// Spoils is the budget of a route, which the screen leaves out.
func Spoils(what string, budget []uncertainty.Contribution) page.Block {
	return page.NotText(page.Fold{Title: "What spoils " + what, Blocks: []page.Block{budgetTable(budget)}})
}

// budgetTable has the influences, the largest first.
func budgetTable(budget []uncertainty.Contribution) page.Block {
	if len(budget) == 0 {
		return page.Paragraph{Text: "Nothing that is counted."}
	}
	t := &page.Table{Head: []string{"influence", "owner", "marked", "standard uncertainty", "share of the variance"}, Numbers: 3}
	for i := range budget {
		line := &budget[i]
		u := strings.TrimSpace(uncertainty.TwoDigits(line.StandardUncertainty) + " " + line.Unit)
		t.Rows = append(t.Rows, page.Row{Cells: []string{influence.Name(&line.Influence), influence.Owner(line.Owner), marks(line), u, FineShare(line.Share)}})
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
