package report

import (
	"strings"

	"minim/equipment"
	"minim/report/page"
	"minim/uncertainty"
	"minim/uncertainty/route"
)

// screen starts the page of a command: what may not meet, what is supposed to be other
// than it is, and what is wanted.
func screen(p *route.Prep, isChanged bool) *page.Page {
	s := &page.Page{Title: title(p), Kind: "screen"}
	if s.Title == "" {
		s.Title = Wanted(p)
	}
	var change page.Block = page.Gap{}
	s.Add(stopBars(p)...)
	if isChanged {
		change = page.Paragraph{Label: "Changed", Text: changed(p)}
		s.Add(page.TextOnly(change))
	}
	if mark := invented(p.Kit); mark != "" {
		s.Add(page.Bar{Text: mark})
	}
	if t := title(p); t != "" {
		s.Add(page.Title{Text: t})
	}
	s.Add(page.NotText(change), page.Paragraph{Label: "Wanted", Text: wanted(p)})
	return s
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

// pictured are the pictures that HTML holds.
func pictured(pictures []page.Figure) (list []page.Block) {
	for _, p := range pictures {
		list = append(list, p)
	}
	return list
}

// lined is a section of lines with labels, or nothing where there are none.
func lined(title string, lines []page.Fact) []page.Block {
	if len(lines) == 0 {
		return nil
	}
	return []page.Block{page.Heading{Text: title}, page.Facts{List: lines, Indent: 2, Bare: true}}
}

// spoils is the budget of a route, which the screen leaves out.
func spoils(title string, budget []uncertainty.Contribution) page.Block {
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
		u := strings.TrimSpace(twoDigits(line.StandardUncertainty) + " " + line.Unit)
		t.Rows = append(t.Rows, page.Row{Cells: []string{line.Name, line.Owner, marks(line), u, fineShare(line.Share)}})
	}
	return t
}

// footingBlocks say what the figures rest on, and cautions.
func footingBlocks(notes *equipment.Notes, cautions []string) []page.Block {
	list := []page.Block{page.Gap{}}
	for _, g := range noteGrounds(notes) {
		list = append(list, page.Notes{Label: g.label, Items: g.list, At: 13})
	}
	return append(list, page.Notes{Label: "Cautions", Items: cautions, At: 13, Join: " "})
}
