package words

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"minim/equipment/quantity"
	"minim/report/page"
	"minim/report/words/note"
	"minim/uncertainty/plan"
	"minim/uncertainty/route"
)

// recommended is the comparison of a search with the route that is recommended alone.
func recommended(p *plan.Plan) *route.Comparison {
	c := *p.Comparison
	c.Results, c.Verdict.Use = c.Results[c.Verdict.Use:c.Verdict.Use+1], 0
	return &c
}

// planReasons say what changes in the kit do, what the other routes have over the one that is
// recommended, what would help, and what was searched.
func planReasons(p, before *plan.Plan) (list []page.Block) {
	if before != nil {
		list = planEffect(p, before)
	}
	list = append(list, lined("What the others have over it", overIt(p))...)
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
	among := " of these routes" + when(p.Verdict.Meets, fmt.Sprintf(" that are inside in %s of 100", asked(p.Prep.LeastChance)))
	otherwise := either(len(p.Prep.Tolerances) == 0, "nearest to the target", "the least left over")
	return cmp.Or(preferences[p.Options.Prefer], otherwise) + among
}

// preferences but for the usual one, which goes by the tolerance.
var preferences = map[string]string{
	route.Tightest: "the least give or take", route.Fewest: "the fewest measurements", route.LeastSolute: "the least solute", route.Cheapest: "the least cost",
}

// planColumns are what the table of a search says of each route.
func planColumns(p *plan.Plan) []column {
	inside := insideColumn(p.Prep)
	columns := []column{
		{"give or", "take", func(r *route.Result) string { return quantity.Percent(r.GiveOrTake()) }},
		inside, {"left", "over/mL", leftOver}, {"times", "meas.", times}, soluteColumn(p.Comparison),
	}
	if cost, known := p.Prep.Cost(&p.Results[0]); known && cost.Currency != "" {
		columns = append(columns, column{"cost", cost.Currency, func(r *route.Result) string {
			cost, _ := p.Prep.Cost(r)
			return quantity.Decimal(cost.Amount, 3)
		}})
	}
	return columns
}

// planTable lists the routes to choose from.
func planTable(p *plan.Plan) *page.Table {
	t := planHead(p, "route")
	t.Indent, t.Most = 4, 60
	for i := range p.Results {
		t.Rows = append(t.Rows, page.Row{Lead: letter(i) + "  ", Cells: planRow(p, i), Marked: i == p.Verdict.Use})
	}
	return t
}

func planHead(p *plan.Plan, name string) *page.Table {
	return tableOf(name, append(planColumns(p), column{head: "near", unit: "equal"}))
}

// planRow is the name of a route, its cells, and how many are nearly equal.
func planRow(p *plan.Plan, i int) []string {
	r := &p.Results[i]
	return slices.Concat([]string{r.Route.Name}, cellsOf(planColumns(p), r), []string{strconv.Itoa(alike(p, i))})
}

// legend explains the names of routes.
const legend = `"2 in 25": 2 mL made up to the mark at 25 mL; "3 + 17": 3 mL and 17 mL of measured solvent`

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

// overIt says of each other route, in a line, what it has over the one that is
// recommended, and what that takes.
func overIt(p *plan.Plan) []fact {
	used := &p.Results[p.Verdict.Use]
	return others(p.Comparison, func(i int, r *route.Result) fact { return fact{letter(i), over(p, r, used)} })
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
	return cmp.Or(strings.Join(better, ", "), "much the same") + when(len(worse) > 0, "; but "+strings.Join(worse, ", "))
}

// more is "2 measurements fewer".
func more(n int, noun string) string {
	return either(n < 0, count(-n, noun)+" fewer", count(n, noun)+" more")
}

func moreOrLess(mL float64, less, more string) string {
	return either(mL < 0, fmt.Sprintf(less, volume(-mL)), fmt.Sprintf(more, volume(mL)))
}

// sureness is the chance of being inside, or within what the target is held.
func sureness(p *plan.Plan, r *route.Result) string {
	if len(r.Inside) == 0 {
		return "within " + quantity.Percent(r.HoldsWithin)
	}
	return insideIn(p.Prep, r)
}

func surer(p *plan.Plan, a, b *route.Result) bool {
	if len(p.Prep.Tolerances) == 0 {
		return a.HoldsWithin < b.HoldsWithin
	}
	return a.Chance() > b.Chance()
}

// searched says how large the search was, of which routes, and what was left out, if anything.
func searched(p *plan.Plan) []string {
	text := either(p.Options.Steps == 0, "direct routes", "routes with up to "+count(p.Options.Steps, "dilution"))
	of := either(p.Candidates > 0, fmt.Sprintf("the %s that the rules allow by volume, and of those by weighing,", about(p.Candidates)), "those by weighing")
	text = fmt.Sprintf("%s; of %s none beats these in all of %s, left over and measurements", text, of, either(len(p.Prep.Tolerances) == 0, "nearness to the target", "chance"))
	list := note.Texts(p.Class())
	if len(p.NotSearched) > 0 {
		text, list = text+", but for what was not searched", append(list, "Not searched: "+strings.Join(note.Texts(p.NotSearched), "; "))
	}
	return append([]string{text}, list...)
}

// ownRoutes say what the routes of the prep itself give.
func ownRoutes(p *plan.Plan) []fact {
	var lines []fact
	for i := range p.Own {
		r := &p.Own[i]
		text := fmt.Sprintf("give or take %s, %s left over, %s", quantity.Percent(r.GiveOrTake()), volume(r.LeftOverML), count(r.Operations, "measurement"))
		switch {
		case !r.Possible:
			text = notPossible(r) + ": " + r.Reason.String()
		case !r.Informative:
			text = "says almost nothing about the amount"
		case len(r.Inside) > 0:
			text = insideIn(p.Prep, r) + ", " + text
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
		text := either(h.Change.Code == "wider-tolerance",
			fmt.Sprintf("the route above is inside it in %s of 100", asked(p.Prep.LeastChance)),
			fmt.Sprintf("the best chance of being inside is then %s in 100", inHundred(h.Chance, p.Prep.LeastChance)))
		lines = append(lines, fact{h.Change.String() + ":", text})
	}
	return lines
}

// planEffect says what changes in the kit do to what is recommended.
func planEffect(p, before *plan.Plan) []page.Block {
	t := planHead(p, "recommended")
	t.Most = 40
	t.Rows = []page.Row{{Lead: " before  ", Cells: planRow(before, before.Verdict.Use)}, {Lead: " now  ", Cells: planRow(p, p.Verdict.Use)}}
	return section(effect{p.Comparison, before.Comparison}.title(), t)
}
