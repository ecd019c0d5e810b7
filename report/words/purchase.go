package words

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"minim/equipment"
	"minim/equipment/quantity"
	"minim/report/page"
	"minim/report/words/note"
	"minim/uncertainty/purchase"
	"minim/uncertainty/route"
)

// Bought is the screen of the question what to buy; before is that on the kit as it is, nil
// without changes.
func Bought(p, before *purchase.Purchase) *screen {
	s := opened(p.Prep, before != nil)
	s.Result, s.Footing = choices(p, before), purchaseFooting(p)
	return s
}

// choices are the verdict, what each bench that could be had allows, and the coarsest balance
// that would do.
func choices(p, before *purchase.Purchase) []page.Block {
	list := []page.Block{
		page.Gap{}, page.Facts{List: verdictFacts(p, before), At: 10},
		page.Heading{Text: "What each allows", Silent: true}, choiceTable(p),
		offScreen(page.Heading{Text: "The best routes"}), page.Facts{List: choiceRoutes(p), At: 4, Indent: 2, Bare: true},
	}
	if len(p.Without) > 0 {
		list = append(list, section("Without one of what that route measures by", page.Facts{List: withoutEach(p), At: 4, Indent: 2, Bare: true})...)
	}
	if before != nil {
		list = append(list, section("On the kit as it is", choiceTable(before))...)
	}
	return append(list, breakEvenBlocks(p)...)
}

// purchaseFooting says what the balance serves for directly, what was not searched, what the
// figures rest on, and cautions.
func purchaseFooting(p *purchase.Purchase) []page.Block {
	list := []page.Block{page.Gap{}}
	if text := directWords(p); text != "" {
		list = append(list, page.Paragraph{Label: "Directly", Text: text, At: 13})
	}
	if len(p.NotSearched) > 0 {
		list = append(list, page.Paragraph{Label: "Not searched", Text: strings.Join(note.Texts(p.NotSearched), "; ")})
	}
	return append(list, footing(purchaseNotes(p), Cautions(p.Prep, WithoutLadder(BestOf(p))))[1:]...)
}

// BestOf is the best route on the bench, or else with what should be bought; nil where
// there is none.
func BestOf(p *purchase.Purchase) *route.Result {
	for _, at := range []int{p.Verdict.Present, p.Verdict.Buy} {
		if at >= 0 && p.Choices[at].Found {
			return &p.Choices[at].Best
		}
	}
	return nil
}

// verdictFacts are the verdict, what it would be otherwise, and what it was before.
func verdictFacts(p, before *purchase.Purchase) []fact {
	sentence, doubled, halved := Verdicts(p)
	list := []fact{{"VERDICT", sentence}}
	if before != nil {
		list = append(list, fact{"Before", verdictSentence(before)})
	}
	if doubled == "" {
		return list
	}
	with := either(doubled == halved, " or halved: "+doubled, fmt.Sprintf(": %s; halved: %s", doubled, halved))
	best := &p.Choices[p.Verdict.Present].Best
	return append(list, fact{"Assumed", assumedOf(&best.Analytic, &best.Quoted) + "; with all that is assumed doubled" + with})
}

// Verdicts are the verdict in a sentence, and in short with all that is assumed doubled, and
// halved; the latter two are empty where nothing is assumed.
func Verdicts(p *purchase.Purchase) (sentence, doubled, halved string) {
	if p.Doubled != nil {
		doubled, halved = ShortVerdict(p, *p.Doubled), ShortVerdict(p, *p.Halved)
	}
	return verdictSentence(p), doubled, halved
}

// ShortVerdict is "the bench is good enough", and what to buy.
func ShortVerdict(p *purchase.Purchase, v purchase.Verdict) string {
	text := either(v.Meets, "the bench is good enough", "the bench is not good enough")
	if len(p.Prep.Tolerances) == 0 {
		text = "no tolerance to meet"
	}
	named := len(p.Prep.Kit.Candidates.Names()) > 0
	switch {
	case v.Present < 0 && v.Buy < 0 && len(CutShort(p)) == 0:
		return "the bench allows no route" + when(named, ", with or without the candidates")
	case v.Buy < 0:
		return text + ", and " + either(named, "no candidate is worth having", "the kit names no candidate")
	case v.Meets || len(p.Prep.Tolerances) == 0:
		return text + ", and the " + p.Choices[v.Buy].Name + " would be better"
	case v.Would:
		return text + ", and with the " + p.Choices[v.Buy].Name + " it is"
	}
	return text + ", nor with the " + p.Choices[v.Buy].Name
}

// verdictSentence is the verdict in a sentence.
func verdictSentence(p *purchase.Purchase) string {
	words, names := searchedSentence(p)+"; the search was cut short with ", CutShort(p)
	switch {
	case len(names) == 0:
		return searchedSentence(p)
	case len(names) > mostNamed:
		return words + fmt.Sprintf("%d of the %d benches, where a better route may exist", len(names), len(p.Choices))
	}
	return words + "the " + strings.Join(names, ", the ") + ", where a better route may exist"
}

// mostNamed is how many benches a verdict names of which the search was cut short.
const mostNamed = 6

// CutShort names the choices of which the search was cut short.
func CutShort(p *purchase.Purchase) (names []string) {
	for i := range p.Choices {
		if p.Choices[i].CutShort {
			names = append(names, p.Choices[i].Name)
		}
	}
	return names
}

// searchedSentence is the verdict by what was searched.
func searchedSentence(p *purchase.Purchase) string {
	v := p.Verdict
	if v.Present < 0 {
		return withoutBalance(p)
	}
	present := &p.Choices[v.Present]
	now := fmt.Sprintf("with the %s, the best route %s", present.Name, achieves(p, present))
	if v.Buy < 0 {
		none := either(len(p.Prep.Kit.Candidates.Names()) == 0, "the kit names no candidate", "no candidate is much better")
		if v.Meets {
			return fmt.Sprintf("nothing need be bought: %s; %s", now, none)
		}
		return fmt.Sprintf("%s: %s; %s", notGoodEnough(p), now, none)
	}
	candidate := &p.Choices[v.Buy]
	then := fmt.Sprintf("with the %s%s, it %s", candidate.Name, Priced(candidate.Price), achieves(p, candidate))
	switch {
	case v.Meets:
		return fmt.Sprintf("nothing need be bought to meet the tolerance: %s; %s", now, then)
	case v.Would:
		return fmt.Sprintf("the %s is worth having: %s; %s", candidate.Name, now, then)
	}
	return fmt.Sprintf("%s: %s; %s", notGoodEnough(p), now, then)
}

func notGoodEnough(p *purchase.Purchase) string {
	return either(len(p.Prep.Tolerances) == 0, "no tolerance is given", "nothing here is good enough")
}

// withoutBalance is the verdict where no route is possible on the bench.
func withoutBalance(p *purchase.Purchase) string {
	allows := either(len(CutShort(p)) > 0, "shows no route so far", "allows no route")
	if p.Verdict.Buy < 0 {
		return "this bench " + allows + ", with or without the candidates"
	}
	candidate := &p.Choices[p.Verdict.Buy]
	return fmt.Sprintf("the bench "+allows+" as it is; with the %s%s, the best %s", candidate.Name, Priced(candidate.Price), achieves(p, candidate))
}

// achieves says what the best route of a choice gives.
func achieves(p *purchase.Purchase, o *purchase.Choice) string {
	r := &o.Best
	left := "leaves " + volume(r.LeftOverML) + " over"
	if len(r.Inside) == 0 {
		return fmt.Sprintf("holds within %s and %s", quantity.Percent(r.HoldsWithin), left)
	}
	return fmt.Sprintf("is %s and %s", insideIn(p.Prep, r), left)
}

// withoutEach says what the present bench comes to without each measure that its best route uses.
func withoutEach(p *purchase.Purchase) (list []fact) {
	for _, o := range p.Without {
		found := when(o.CutShort, " found so far")
		list = append(list, fact{o.Name + ":", either(o.Found, "the best route"+found+" "+achieves(p, &o), "no route"+found)})
	}
	return list
}

// Priced is the price in brackets, where it is stated.
func Priced(p equipment.Price) string { return when(p.Stated(), " ("+p.String()+")") }

// choiceColumns are what is said of the best route of a choice.
func choiceColumns(p *purchase.Purchase) []column {
	return []column{insideColumn(p.Prep), {"left", "over/mL", leftOver}, {"times", "meas.", times}}
}

// choiceTable has the benches that could be had and what each allows.
func choiceTable(p *purchase.Purchase) *page.Table {
	t := tableOf("with", append(choiceColumns(p), column{head: "least g", unit: "USP <41>"}, column{head: "least g", unit: "2 s"}, column{head: "least g", unit: "model"}, column{head: "price"}))
	t.Indent, t.Most, t.Least = 4, 40, 8
	for i := range p.Choices {
		t.Rows = append(t.Rows, choiceRow(p, i))
	}
	for _, column := range []int{7, 6, 5, 4} {
		t.DropEmpty(column)
	}
	return t
}

func choiceRow(p *purchase.Purchase, i int) page.Row {
	o := &p.Choices[i]
	row := page.Row{Lead: RowLetter(i) + " " + either(o.Owned, " ", "+"), Marked: i == p.Verdict.Present || i == p.Verdict.Buy}
	cells := []string{o.Name, "no route", "", ""}
	switch {
	case o.Found:
		cells = append(cells[:1], cellsOf(choiceColumns(p), &o.Best)...)
	case o.CutShort:
		cells[1] = "cut short"
	}
	row.Cells = append(cells, mass(o.LeastByUSP), mass(o.LeastWithin), mass(o.LeastByModel), when(o.Price.Stated(), o.Price.String()))
	return row
}

// leastWords say what the columns of the least masses are; "" where there is none.
func leastWords(p *purchase.Purchase) string {
	var byUSP, within, byModel float64
	for i := range p.Choices {
		o := &p.Choices[i]
		byUSP, within, byModel = max(byUSP, o.LeastByUSP), max(within, o.LeastWithin), max(byModel, o.LeastByModel)
	}
	var words clauses
	words.Add(byUSP > 0, "USP <41> the rule of that chapter for accurate weighing, whatever is asked for here (2 s within 0.10 %%: 2000 s, s not below 0.41 d)")
	words.Add(within > 0, "2 s within this tolerance")
	words.Add(byModel > 0, "model within this tolerance with a chance of 95 in 100, by this model")
	return when(len(words) > 0, "the least mass to be weighed: "+strings.Join(words, "; "))
}

func mass(g float64) string { return when(g != 0, quantity.Decimal(g, 2)) }

// choiceRoutes name the best route of each choice.
func choiceRoutes(p *purchase.Purchase) []fact {
	var lines []fact
	for i := range p.Choices {
		if o := &p.Choices[i]; o.Found {
			lines = append(lines, fact{RowLetter(i), o.Best.Route.Name})
		}
	}
	if slices.ContainsFunc(p.Choices, func(o purchase.Choice) bool { return !o.Owned }) {
		lines = append(lines, fact{"+", "a candidate, which is not owned"})
	}
	if text := leastWords(p); text != "" {
		lines = append(lines, fact{"g", text})
	}
	return lines
}

// breakEvenBlocks say which is the coarsest balance that would do; none where there is none.
func breakEvenBlocks(p *purchase.Purchase) []page.Block {
	if len(p.BreakEven) == 0 {
		return nil
	}
	title := fmt.Sprintf("The coarsest balance, otherwise like the %s, that would do if no more than %s is left over", p.Like.Name, volume(p.MostLeftOver))
	t := &page.Table{Head: []string{"", "reads to", "left over"}, Units: []string{"dilutions", "g", "mL"}, Numbers: 1, Indent: 2}
	for _, e := range p.BreakEven {
		t.Rows = append(t.Rows, page.Row{Cells: breakEvenRow(e)})
	}
	return section(title, t, page.Paragraph{Text: breakEvenWords(p), At: 2})
}

func breakEvenRow(e purchase.BreakEven) []string {
	name, reads := strconv.Itoa(e.Dilutions), quantity.Number(e.Readability)
	if e.Dilutions == 0 {
		name = "none, weighed directly"
	}
	switch {
	case e.Readability == 0 && e.CutShort:
		return []string{name, "none found so far", ""}
	case e.Readability == 0:
		return []string{name, "none is fine enough", ""}
	case e.CutShort:
		reads = "≥ " + reads
	}
	return []string{name, reads, quantity.Decimal(e.LeftOver, 3)}
}

// breakEvenWords say what is taken to change with the readability.
func breakEvenWords(p *purchase.Purchase) string {
	words := fmt.Sprintf("Of 1, 2 and 5 times a power of ten; its repeatability and linearity are as many digits as those of the %s. By volume, from a weighing.", p.Like.Name)
	cut := slices.ContainsFunc(p.BreakEven, func(e purchase.BreakEven) bool { return e.CutShort && e.Readability > 0 })
	return words + when(cut, " ≥: or coarser; the search was cut short.")
}

// directWords say from which volume on the present balance serves directly.
func directWords(p *purchase.Purchase) string {
	if p.DirectML == 0 || math.IsInf(p.DirectML, 0) {
		return ""
	}
	return fmt.Sprintf("from %s of the wanted solution on, the %s weighs its solute to within the tolerance (95 %%), glass not counted", volume(p.DirectML), p.Like.Name)
}

// purchaseNotes are what the best route of the verdict rests on.
func purchaseNotes(p *purchase.Purchase) *equipment.Notes {
	if r := BestOf(p); r != nil {
		return &r.Notes
	}
	return new(equipment.Notes)
}
