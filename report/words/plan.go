package words

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"minim/equipment/quantity"
	"minim/report/page"
	"minim/report/words/note"
	"minim/uncertainty/plan"
	"minim/uncertainty/policy"
	"minim/uncertainty/route"
)

// recommended is the comparison of a search with the route that is recommended alone.
func recommended(p *plan.Plan) *route.Comparison {
	c := *p.Comparison
	c.Results, c.Verdict.Use = c.Results[c.Verdict.Use:c.Verdict.Use+1], 0
	return &c
}

// planReasons say what changes in the kit do, what more measurements buy, what would help, and what
// was searched.
func planReasons(p, before *plan.Plan) (list []page.Block) {
	if before != nil {
		list = planEffect(p, before)
	}
	list = append(list, lined("What more measurements buy", buys(p))...)
	list = append(list, lined("What would help", HelpLines(p))...)
	if own := ownRoutes(p); len(own) > 0 { // of names that people gave, as long as they like
		list = append(list, page.Heading{Text: "Your own routes"}, page.Facts{List: own, Indent: 2, Colon: true, Most: 30})
	}
	return append(list, page.Gap{}, page.Notes{Label: "Searched", Items: searched(p), At: 13, Join: "\n"})
}

// planFacts say why a route is recommended, and what it costs.
func planFacts(p *plan.Plan) []fact {
	list := append([]fact{{"Chosen", chosenBy(p)}}, OwnFirst(p)...)
	if cost, known := plan.Cost(p.Prep, &p.Results[p.Verdict.Use]); known {
		list = append(list, fact{"Cost", cost.String() + " of solute and solvent"})
	}
	return list
}

// OwnFirst says which of the routes of the prep itself comes before the one that is recommended.
func OwnFirst(p *plan.Plan) []fact {
	all := append([]route.Result{p.Results[p.Verdict.Use]}, p.Own...)
	c := p.Prep.Choose(all)
	if c.Use <= 0 || p.Options.Prefer != route.Usual || slices.Contains([]policy.Rule{policy.Roundness, policy.Solute, policy.Name}, c.Fell[0]) {
		return nil
	}
	return []fact{{"Your own", fmt.Sprintf("%q comes before it by the same rules: this one %s", all[c.Use].Route.Name, outdone{p.Prep, &all[0], &all[c.Use], c.Least}.by(c.Fell[0]))}}
}

// chosenBy says by which policy a route is recommended.
func chosenBy(p *plan.Plan) string {
	if len(p.Prep.Tolerances) > 0 && !p.Verdict.Meets {
		return "about the greatest chance of being inside that " + either(p.Options.From != "", "other readings of this route have", "this bench allows")
	}
	if p.Options.Prefer == route.Usual {
		return policyOrder(p.Prep)
	}
	among := " of these routes" + when(p.Verdict.Meets, fmt.Sprintf(" that are inside %s in 100", asked(p.Prep.LeastChance)))
	leastLeft := either(len(p.Prep.Tolerances) == 0, "nearest to the target", "the least left over")
	return cmp.Or(preferences[p.Options.Prefer], leastLeft) + among
}

// preferences but for the usual one and least left over, which goes by the tolerance.
var preferences = map[string]string{
	route.Tightest: "the least give or take", route.Fewest: "the fewest measurements", route.LeastSolute: "the least solute", route.Cheapest: "the least cost",
}

// planColumns are what the table of a search says of each route.
func planColumns(p *plan.Plan) []column {
	columns := []column{
		{"give or", "take", func(r *route.Result) string { return quantity.Percent(r.GiveOrTake()) }},
		insideColumn(p.Prep), {"left", "over/mL", leftOver}, {"times", "meas.", times}, soluteColumn(p.Comparison),
	}
	if cost, known := plan.Cost(p.Prep, &p.Results[0]); known && cost.Currency != "" {
		columns = append(columns, column{"cost", cost.Currency, func(r *route.Result) string {
			cost, _ := plan.Cost(p.Prep, r)
			return quantity.Decimal(cost.Amount, 3)
		}})
	}
	return columns
}

// planTable lists the best routes by the number of measurements.
func planTable(p *plan.Plan) *page.Table {
	t := planHead(p, "route")
	t.Indent, t.Most = 4, 60
	for i := range p.Results {
		t.Rows = append(t.Rows, page.Row{Lead: RowLetter(i) + "  ", Cells: planRow(p, &p.Results[i]), Marked: i == p.Verdict.Use})
	}
	return t
}

// planAll lists all routes that were simulated.
func planAll(p *plan.Plan) []page.Block {
	t := planHead(p, "route")
	for i := range p.Front {
		t.Rows = append(t.Rows, page.Row{Cells: planRow(p, &p.Front[i].Result), Marked: p.Front[i].Route == p.Results[p.Verdict.Use].Route})
	}
	t.Indent, t.Most = 4, 60
	return section("All routes that no other beats in chance, left over and measurements, and rounder ones", t)
}

func planHead(p *plan.Plan, name string) *page.Table { return tableOf(name, planColumns(p)) }

// planRow is the name of a route and its cells.
func planRow(p *plan.Plan, r *route.Result) []string {
	return append([]string{r.Route.Name}, cellsOf(planColumns(p), r)...)
}

// fallShort tells those of the routes that are shown apart that do not have the chance asked for, where another does.
func fallShort(p *plan.Plan) string {
	var short []string
	for i := range p.Results {
		if p.Verdict.Meets && !p.Prep.Meets(&p.Results[i]) {
			short = append(short, RowLetter(i))
		}
	}
	return when(len(short) > 0, fmt.Sprintf("Not enough: %s, for want of the %s in 100 asked for. ", quantity.Series(short, "and"), asked(p.Prep.LeastChance)))
}

// legend explains the names of routes.
const legend = `"2 in 25": 2 mL made up to the mark at 25 mL; "3 + 17": 3 mL and 17 mL of measured solvent`

// buys says of each route but the first what more measurements give: of those up to the one that is
// recommended beside the one before, of those after it beside it.
func buys(p *plan.Plan) (list []fact) {
	for i := 1; i < len(p.Results); i++ {
		before := min(i-1, p.Verdict.Use)
		list = append(list, fact{RowLetter(i), bought(p, &p.Results[i], &p.Results[before]) + worthIt(p, i)})
	}
	return list
}

// worthIt says of a route that is recommended by the usual policy, or has more measurements than
// that, whether these are worth it.
func worthIt(p *plan.Plan, at int) string {
	if p.Options.Prefer != route.Usual || at < p.Verdict.Use {
		return ""
	}
	used, r := &p.Results[p.Verdict.Use], &p.Results[at]
	switch by := FellBy(p.Comparison, r); by {
	case policy.None:
		return when(at == p.Verdict.Use, ": worth it")
	case policy.Operations:
		return ": not worth it"
	default:
		return "; but it " + outdone{p.Prep, r, used, p.Verdict.Choice.Least}.by(by)
	}
}

// bought says what one route gives beside another with fewer measurements.
func bought(p *plan.Plan, r, before *route.Result) string {
	what, one := moreSteps(r, before)
	saved, s := before.LeftOverML-r.LeftOverML, when(one, "s")
	var parts clauses
	parts.Add(saved > 1e-9, "save%s %s", s, volume(saved))
	parts.Add(saved < -1e-9, "leave%s %s more", s, volume(-saved))
	if a, b := sureness(p.Prep, r), sureness(p.Prep, before); a != b {
		parts = append(parts, fmt.Sprintf("%s (before: %s)", a, b))
	}
	if len(parts) == 0 {
		parts = clauses{"give" + s + " much the same"}
	}
	return what + " " + strings.Join(parts, ", ")
}

// moreSteps is "a third dilution", or "2 more measurements", and whether it is one thing.
func moreSteps(r, before *route.Result) (text string, one bool) {
	if n := r.Dilutions; n == before.Dilutions+1 && n < len(ordinals) {
		return ordinals[n], true
	}
	n := r.Operations - before.Operations
	return count(n, "more measurement"), n == 1
}

var ordinals = []string{"", "a dilution", "a second dilution", "a third dilution", "a fourth dilution", "a fifth dilution"}

// sureness is the chance of being inside, or within what the target is held.
func sureness(p *route.Prep, r *route.Result) string {
	return either(len(r.Inside) == 0, "within "+quantity.Percent(r.HoldsWithin), insideIn(p, r))
}

// searched says how large the search was, of which routes, and what was left out, if anything.
func searched(p *plan.Plan) []string {
	if p.Options.From != "" {
		return []string{fmt.Sprintf("nothing but rounder readings of %q, with the instruments that it has", p.Options.From)}
	}
	of := either(p.Candidates > 0, fmt.Sprintf("the %s that the rules allow with a volume measured, and of those by weighing,", about(p.Candidates)), "those by weighing")
	list := append([]string{fmt.Sprintf("%s; of %s those are compared that no other beats in all of %s, left over and measurements, and rounder ones beside those that leave least over%s",
		either(p.Options.Steps == 0, "direct routes", "routes with up to "+count(p.Options.Steps, "dilution")), of, either(len(p.Prep.Tolerances) == 0, "nearness to the target", "chance"), when(len(p.NotSearched) > 0, ", but for what was not searched"))}, note.Texts(append(p.Class(), p.Saves()...))...)
	if len(p.NotSearched) > 0 {
		list = append(list, "Not searched: "+strings.Join(note.Texts(p.NotSearched), "; "))
	}
	return list
}

// ownRoutes say what the routes of the prep itself give.
func ownRoutes(p *plan.Plan) []fact {
	var lines []fact
	for i := range p.Own {
		r := &p.Own[i]
		text := fmt.Sprintf("give or take %s, %s left over, %s", quantity.Percent(r.GiveOrTake()), volume(r.LeftOverML), count(r.Operations, "measurement"))
		switch {
		case !r.Possible:
			text = NotPossible(r) + ": " + r.Reason.String()
		case !r.Informative:
			text = "says almost nothing about the amount"
		case len(r.Inside) > 0:
			text = insideIn(p.Prep, r) + ", " + text
		}
		doubts := note.Texts(note.Doubts(r.Notes.Warnings))
		text += when(len(doubts) > 0, "; in doubt: "+strings.Join(doubts, "; "))
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

// HelpLines say what would help where no route is good enough.
func HelpLines(p *plan.Plan) []fact {
	var lines []fact
	for _, h := range p.Helps {
		text := either(h.Change.Code == "wider-tolerance",
			fmt.Sprintf("this route has %s in 100 inside", asked(p.Prep.LeastChance)),
			fmt.Sprintf("then %s in 100 inside%s", inHundred(h.Chance, p.Prep.LeastChance), when(h.CutShort, ", or more")))
		lines = append(lines, fact{h.Change.String() + ":", text})
	}
	return lines
}

// planEffect says what changes in the kit do to what is recommended.
func planEffect(p, before *plan.Plan) []page.Block {
	t := planHead(p, "recommended")
	t.Most = 40
	t.Rows = []page.Row{{Lead: " before  ", Cells: planRow(before, &before.Results[before.Verdict.Use])}, {Lead: " now  ", Cells: planRow(p, &p.Results[p.Verdict.Use])}}
	return section(effect{p.Comparison, before.Comparison}.title(), t)
}
