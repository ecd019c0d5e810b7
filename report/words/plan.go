package words

import (
	"fmt"
	"strconv"
	"strings"

	"minim/equipment/quantity"
	"minim/report/page"
	"minim/report/words/note"
	"minim/uncertainty/plan"
	"minim/uncertainty/route"
)

// PlanRecommended says what comes before everything else, which route is recommended, and
// what it gives.
func PlanRecommended(p *plan.Plan) []page.Block {
	return append(firstBlocks(recommended(p)), useBlocks(p.Comparison, append(facts(p.Comparison), planFacts(p)...))...)
}

// recommended is the comparison of a search with the route that is recommended alone.
func recommended(p *plan.Plan) *route.Comparison {
	c := *p.Comparison
	c.Results, c.Verdict.Use = c.Results[c.Verdict.Use:c.Verdict.Use+1], 0
	return &c
}

// PlanRoutes are the routes to choose from.
func PlanRoutes(p *plan.Plan) []page.Block {
	return []page.Block{page.Heading{Text: "The routes that no other beats", Silent: true}, planTable(p), page.Paragraph{Text: legend, At: 4}}
}

// PlanReasons say what changes in the kit do, what the other routes have over the one that is
// recommended, what would help, and what was searched.
func PlanReasons(p, before *plan.Plan) (list []page.Block) {
	if before != nil {
		list = planEffect(p, before)
	}
	list = append(list, lined("What the others have over it", planReasons(p))...)
	list = append(list, lined("What would help", helpLines(p))...)
	if own := ownRoutes(p); len(own) > 0 { // of names that people gave, as long as they like
		list = append(list, page.Heading{Text: "Your own routes"}, page.Facts{List: own, Indent: 2, Colon: true, Most: 30})
	}
	return append(list, page.Gap{}, page.Notes{Label: "Searched", Items: searched(p), At: 13, Join: "\n"})
}

// planFacts say why a route is recommended, and what it costs.
func planFacts(p *plan.Plan) []fact {
	list := []fact{{"Chosen", chosenBy(p)}}
	if cost, known := p.Prep.Cost(&p.Results[p.Verdict.Use]); known {
		list = append(list, fact{"Cost", cost.String() + " of solute and solvent"})
	}
	return list
}

// chosenBy says by which policy a route is recommended.
func chosenBy(p *plan.Plan) string {
	if len(p.Prep.Tolerances) > 0 && !p.Verdict.Meets {
		return "the greatest chance of being inside that this bench allows"
	}
	among := " of these routes"
	if p.Verdict.Meets {
		among = fmt.Sprintf(" of these routes that are inside in %s of 100", Asked(p.Prep.LeastChance))
	}
	switch p.Options.Prefer {
	case route.Tightest:
		return "the least give or take" + among
	case route.Fewest:
		return "the fewest measurements" + among
	case route.LeastSolute:
		return "the least solute" + among
	case route.Cheapest:
		return "the least cost" + among
	}
	if len(p.Prep.Tolerances) == 0 {
		return "nearest to the target" + among
	}
	return "the least left over" + among
}

// planTable lists the routes to choose from.
func planTable(p *plan.Plan) *page.Table {
	names, units := planHead(p)
	t := &page.Table{Head: names, Units: units, Numbers: 1, Indent: 4, Most: 60, Least: 12}
	for i := range p.Results {
		t.Rows = append(t.Rows, page.Row{Lead: letter(i) + "  ", Cells: planRow(p, i), Marked: i == p.Verdict.Use})
	}
	return t
}

// planRow is the name of a route and its cells.
func planRow(p *plan.Plan, i int) []string {
	return append([]string{p.Results[i].Route.Name}, planCells(p, i)...)
}

// legend explains the names of routes.
const legend = `"2 in 25": 2 mL made up to the mark at 25 mL; "3 + 17": 3 mL and 17 mL of measured solvent`

// letter is the letter of a row: a to z, then a number.
func letter(i int) string {
	if i < 26 {
		return string(rune('a' + i))
	}
	return strconv.Itoa(i + 1)
}

// planHead is what the columns hold, in two lines.
func planHead(p *plan.Plan) (names, units []string) {
	names = []string{"", "give or", insideHead(p.Comparison), "left", "times"}
	units = []string{"route", "take", insideUnit(p.Comparison), "over/mL", "meas."}
	_, unit := soluteUsed(p.Prep, &p.Results[0])
	names, units = append(names, "solute"), append(units, unit)
	if _, currency := planCost(p, 0); currency != "" {
		names, units = append(names, "cost"), append(units, currency)
	}
	return append(names, "near"), append(units, "equal")
}

// planCells are those of a route after its name.
func planCells(p *plan.Plan, i int) []string {
	r := &p.Results[i]
	inside := quantity.Percent(r.HoldsWithin)
	if len(r.Inside) > 0 {
		inside = InHundred(r.Chance(), p.Prep.LeastChance)
	}
	row := []string{
		quantity.Percent(r.Analytic.ExpandedUncertainty / r.Analytic.Value), inside,
		quantity.Decimal(r.LeftOverML, 3), strconv.Itoa(r.Operations),
	}
	solute, _ := soluteUsed(p.Prep, r)
	row = append(row, quantity.Decimal(solute, 3))
	if cost, currency := planCost(p, i); currency != "" {
		row = append(row, cost)
	}
	return append(row, strconv.Itoa(alike(p, i)))
}

// planCost is the cost of a route and its currency, which is empty without prices.
func planCost(p *plan.Plan, i int) (cost, currency string) {
	c, known := p.Prep.Cost(&p.Results[i])
	if !known {
		return "", ""
	}
	return quantity.Decimal(c.Amount, 3), c.Currency
}

// alike counts the near-equals of a route.
func alike(p *plan.Plan, group int) int {
	n := -1
	for i := range p.Front {
		if p.Front[i].Group == group {
			n++
		}
	}
	return n
}

// planReasons say of each other route, in a line, what it has over the one that is
// recommended, and what that takes.
func planReasons(p *plan.Plan) []fact {
	used := &p.Results[p.Verdict.Use]
	var lines []fact
	for i := range p.Results {
		if r := &p.Results[i]; i != p.Verdict.Use {
			lines = append(lines, fact{letter(i), over(p, r, used)})
		}
	}
	return lines
}

// over compares a route with another: first what it has over it.
func over(p *plan.Plan, r, used *route.Result) string {
	var better, worse []string
	put := func(less bool, text string) {
		if less {
			better = append(better, text)
		} else {
			worse = append(worse, text)
		}
	}
	if n := r.Operations - used.Operations; n != 0 {
		put(n < 0, more(n, "measurement"))
	}
	if d := r.LeftOverML - used.LeftOverML; !route.SameVolume(r.LeftOverML, used.LeftOverML) {
		put(d < 0, moreOrLess(d, "%s less left over", "%s more left over"))
	}
	if a := sureness(p, r); a != sureness(p, used) {
		put(surer(p, r, used), a)
	}
	text := strings.Join(better, ", ")
	if text == "" {
		text = "much the same"
	}
	if len(worse) > 0 {
		text += "; but " + strings.Join(worse, ", ")
	}
	return text
}

// more is "2 measurements fewer".
func more(n int, noun string) string {
	if n < 0 {
		return count(-n, noun) + " fewer"
	}
	return count(n, noun) + " more"
}

func moreOrLess(mL float64, less, more string) string {
	if mL < 0 {
		return fmt.Sprintf(less, Volume(-mL))
	}
	return fmt.Sprintf(more, Volume(mL))
}

// sureness is the chance of being inside, or within what the target is held.
func sureness(p *plan.Plan, r *route.Result) string {
	if len(r.Inside) == 0 {
		return "within " + quantity.Percent(r.HoldsWithin)
	}
	return "inside in " + InHundred(r.Chance(), p.Prep.LeastChance) + " of 100"
}

func surer(p *plan.Plan, a, b *route.Result) bool {
	if len(p.Prep.Tolerances) == 0 {
		return a.HoldsWithin < b.HoldsWithin
	}
	return a.Chance() > b.Chance()
}

// searched says how large the search was, and what was left out, if anything.
func searched(p *plan.Plan) []string {
	text := fmt.Sprintf("routes with up to %s", count(p.Options.Steps, "dilution"))
	if p.Options.Steps == 0 {
		text = "direct routes"
	}
	of := "those by weighing"
	if p.Candidates > 0 {
		of = fmt.Sprintf("the %s that the rules allow by volume, and of those by weighing,", about(p.Candidates))
	}
	text = fmt.Sprintf("%s; of %s none beats these in all of %s, left over and measurements", text, of, whatCounts(p))
	if len(p.NotSearched) > 0 {
		return []string{text + ", but for what was not searched", "Not searched: " + strings.Join(note.Texts(p.NotSearched), "; ")}
	}
	return []string{text}
}

// whatCounts is what routes are judged by beside left over and measurements.
func whatCounts(p *plan.Plan) string {
	if len(p.Prep.Tolerances) == 0 {
		return "nearness to the target"
	}
	return "chance"
}

// ownRoutes say what the routes of the prep itself give.
func ownRoutes(p *plan.Plan) []fact {
	var lines []fact
	for i := range p.Own {
		r := &p.Own[i]
		text := fmt.Sprintf("give or take %s, %s left over, %s", quantity.Percent(r.Analytic.ExpandedUncertainty/r.Analytic.Value), Volume(r.LeftOverML), count(r.Operations, "measurement"))
		switch {
		case !r.Possible:
			text = notPossible(r) + ": " + r.Reason.String()
		case !r.Informative:
			text = "says almost nothing about the amount"
		case len(r.Inside) > 0:
			text = "inside in " + InHundred(r.Chance(), p.Prep.LeastChance) + " of 100, " + text
		}
		if r.Elsewhere != nil {
			text = elsewhereWords(p.Prep, r) + "; " + text
		}
		lines = append(lines, fact{r.Route.Name, text})
	}
	return lines
}

// about prints a count, a large one rounded in words.
func about(n float64) string {
	switch {
	case n >= 1e15:
		return fmt.Sprintf("about %.0e", n)
	case n >= 1e12:
		return quantity.Decimal(n/1e12, 2) + " million million"
	case n >= 1e9:
		return quantity.Decimal(n/1e9, 2) + " thousand million"
	case n >= 1e6:
		return quantity.Decimal(n/1e6, 2) + " million"
	}
	return quantity.Grouped(int(n))
}

// helpLines say what would help where no route is good enough.
func helpLines(p *plan.Plan) []fact {
	var lines []fact
	for _, h := range p.Helps {
		text := fmt.Sprintf("the best chance of being inside is then %s in 100", InHundred(h.Chance, p.Prep.LeastChance))
		if h.Change.Code == "wider-tolerance" {
			text = fmt.Sprintf("the route above is inside it in %s of 100", Asked(p.Prep.LeastChance))
		}
		lines = append(lines, fact{h.Change.String() + ":", text})
	}
	return lines
}

// planEffect says what changes in the kit do to what is recommended.
func planEffect(p, before *plan.Plan) []page.Block {
	names, units := planHead(p)
	units[0] = "recommended"
	return []page.Block{page.Heading{Text: effect{p.Comparison, before.Comparison}.title()}, &page.Table{Head: names, Units: units, Numbers: 1, Indent: 2, Most: 40, Least: 12, Rows: []page.Row{
		{Lead: " before  ", Cells: planRow(before, before.Verdict.Use)},
		{Lead: " now  ", Cells: planRow(p, p.Verdict.Use)},
	}}}
}
