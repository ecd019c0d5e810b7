package words

import (
	"minim/equipment"
	"minim/report/page"
	"minim/report/words/kits"
	"minim/report/words/note"
	"minim/uncertainty"
	"minim/uncertainty/plan"
	"minim/uncertainty/rescue"
	"minim/uncertainty/route"
)

// screen is what the page of a command says, part by part. A part that a command does not have
// is empty.
type screen struct {
	// Title of the page.
	Title string
	// Opening is what may not meet, what is supposed to be other than it is, and what is wanted.
	Opening []page.Block
	// Result is the verdict, or what there is; Routes are those to choose from.
	Result, Routes []page.Block
	// Changes are what a changed kit does, Ladder is what is made from the solution, Reasons say
	// why so, Rest what was done and can be done, Spoils is the budget.
	Changes, Ladder, Reasons, Rest, Spoils []page.Block
	// Footing is what the figures rest on, and cautions.
	Footing []page.Block
}

// opened is the screen of a prep with what comes first.
func opened(p *route.Prep, isChanged bool) *screen {
	s := &screen{Title: Titled(p), Opening: stopBars(p)}
	var change page.Block = page.Gap{}
	if isChanged {
		change = page.Paragraph{Label: "Changed", Text: changed(p)}
		s.Opening = append(s.Opening, page.Only{Text: true, Blocks: []page.Block{change}})
	}
	if mark := kits.Invented(p.Kit); mark != "" {
		s.Opening = append(s.Opening, bar(mark))
	}
	if s.Title != "" {
		s.Opening = append(s.Opening, page.Title{Text: s.Title})
	} else {
		s.Title = Wanted(p)
	}
	s.Opening = append(s.Opening, offScreen(change), page.Paragraph{Label: "Wanted", Text: wantedWithin(p)})
	return s
}

// Compared is the screen of a comparison; before is that on the kit as it is, nil without
// changes.
func Compared(c, before *route.Comparison) *screen {
	s := opened(c.Prep, before != nil)
	s.Result = append(firstBlocks(c), useBlocks(c, facts(c))...)
	s.Routes = []page.Block{page.Heading{Text: "All routes", Silent: true}, routeTable(c), page.Bullets{Items: alsoInside(c), Label: "  also:", At: 9}}
	if before != nil {
		s.Changes = whatChanged(c, before)
	}
	s.Ladder, s.Reasons = ladder(c), whyNotOthers(c)
	s.foot(c, &c.Results[c.Verdict.Use], &c.Notes)
	return s
}

// Planned is the screen of a search; before is that on the kit as it is, nil without changes.
func Planned(p, before *plan.Plan) *screen {
	s := opened(p.Prep, before != nil)
	s.Result = append(firstBlocks(recommended(p)), useBlocks(p.Comparison, append(facts(p.Comparison), planFacts(p)...))...)
	s.Routes = []page.Block{page.Heading{Text: "The best routes by their measurements", Silent: true}, planTable(p), page.Paragraph{Text: fallShort(p) + legend, At: 4}}
	if p.Options.Listed {
		s.Routes = append(s.Routes, planAll(p)...)
	}
	s.Reasons = planReasons(p, before)
	s.foot(p.Comparison, WithoutLadder(&p.Results[p.Verdict.Use]), &p.Notes)
	return s
}

// foot adds the budget of the route to use, what the figures rest on, and cautions.
func (s *screen) foot(c *route.Comparison, used *route.Result, notes *equipment.Notes) {
	s.Spoils = spoils("What spoils "+used.Route.Name, used.Analytic.Budget)
	s.Footing = footing(notes, Cautions(c.Prep, used), owners(c, used)...)
}

// owners of warnings are routes, the one that is used first.
func owners(c *route.Comparison, used *route.Result) []note.Owner {
	list := []note.Owner{{Name: used.Route.Name, Notes: used.Notes.Warnings}}
	for i := range c.Results {
		list = append(list, note.Owner{Name: c.Results[i].Route.Name, Notes: c.Results[i].Notes.Warnings})
	}
	return list
}

// Rescued is the screen of the ways to correct a solution at hand.
func Rescued(r *rescue.Rescue) *screen {
	s, used := opened(r.Prep, false), &r.Results[r.Verdict.Use]
	s.Result = append([]page.Block{page.Paragraph{Label: "There is", Text: BatchWords(r)}}, corrections(r)...)
	s.Spoils, s.Footing = spoils("What spoils it", used.Analytic.Budget), footing(&r.Notes, Cautions(r.Prep, WithoutLadder(used)), owners(r.Comparison, used)...)
	return s
}

// Screen is that of a batch.
func (b *Batch) Screen() *screen {
	s := opened(b.Prep, false)
	s.Result, s.Rest = madeIs(b), doneAndToCome(b)
	s.Spoils, s.Footing = spoils("What spoils it", b.AsMade.Analytic.Budget), footing(&b.AsMade.Notes, b.Cautions())
	return s
}

// firstBlocks say what comes before everything else.
func firstBlocks(c *route.Comparison) (list []page.Block) {
	for _, line := range FirstLines(c) {
		list = append(list, page.Paragraph{Label: "First", Text: line, At: 8})
	}
	return list
}

// useBlocks show the route to use as numbered steps, and what it gives.
func useBlocks(c *route.Comparison, facts []page.Fact) []page.Block {
	r := &c.Results[c.Verdict.Use]
	return []page.Block{
		page.Heading{Label: VerdictWord(c), Text: r.Route.Name},
		page.Steps{Items: Instructions(c.Prep, r.Route)},
		page.Gap{},
		page.Facts{List: facts, At: 14, Indent: 2},
	}
}

// spoils is the budget of a route, which the text screen leaves out.
func spoils(title string, budget []uncertainty.Contribution) []page.Block {
	return []page.Block{offScreen(page.Fold{Title: title, Blocks: []page.Block{budgetTable(budget)}})}
}

// footing says what the figures rest on, and cautions.
func footing(notes *equipment.Notes, cautions []string, of ...note.Owner) []page.Block {
	list := []page.Block{page.Gap{}}
	for _, g := range noteGrounds(notes, of...) {
		list = append(list, page.Notes{Label: g.Label, Items: g.Items, At: 13})
	}
	return append(list, page.Notes{Label: "Cautions", Items: cautions, At: 13, Join: " "})
}
