package report

import (
	"strings"

	"minim/report/page"
	"minim/report/words"
	"minim/report/words/note"
	"minim/uncertainty/plan"
)

// Purchase is the page about the question whether another instrument is worth having: what
// is wanted, the verdict, the best route with each, the coarsest balance that would do, what the
// figures rest on, and cautions. Before is the answer for the kit as it is, nil without
// changes: see [Compare].
func Purchase(p, before *plan.Purchase, pictures ...page.Figure) *page.Page {
	s := screen(p.Prep, before != nil)
	s.Add(page.Gap{}, page.Facts{List: words.VerdictFacts(p, before), At: 10},
		page.Heading{Text: "What each allows", Silent: true}, words.ChoiceTable(p),
		page.NotText(page.Heading{Text: "The best routes"}), page.Facts{List: words.ChoiceRoutes(p), At: 4, Indent: 2, Bare: true})
	if before != nil {
		s.Section("On the kit as it is", words.ChoiceTable(before))
	}
	s.Add(words.BreakEven(p)...)
	s.Add(pictured(pictures)...)
	s.Add(page.Gap{})
	if text := words.DirectWords(p); text != "" {
		s.Add(page.Paragraph{Label: "Directly", Text: text, At: 13})
	}
	if len(p.NotSearched) > 0 {
		s.Add(page.Paragraph{Label: "Not searched", Text: strings.Join(note.Texts(p.NotSearched), "; ")})
	}
	s.Add(words.Footing(words.PurchaseNotes(p), words.Cautions(p.Prep, words.BestOf(p)))[1:]...)
	return s
}
