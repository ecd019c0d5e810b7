package words

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode/utf8"

	"minim/equipment"
	"minim/equipment/quantity"
	"minim/report/page"
	"minim/report/words/note"
	"minim/uncertainty/route"
)

// routeColumns are what the table of all routes says of each.
func routeColumns(c *route.Comparison) []column {
	return append(strengthColumns(c), column{"left over", "mL", leftOver}, soluteColumn(c))
}

// routeTable lists all routes in the order of the prep.
func routeTable(c *route.Comparison) *page.Table {
	columns := routeColumns(c)
	t := tableOf("route", columns)
	for i := range c.Results {
		r := &c.Results[i]
		t.Rows = append(t.Rows, page.Row{Cells: append([]string{r.Route.Name}, cells(columns, r)...), Marked: i == c.Verdict.Use})
	}
	return t
}

// cells of a route after its name: one where there is nothing to tabulate.
func cells(columns []column, r *route.Result) []string {
	switch {
	case !r.Possible:
		return []string{NotPossible(r)}
	case !r.Informative:
		return []string{"says almost nothing about the amount"}
	}
	return cellsOf(columns, r)
}

// alsoInside is a line for each tolerance but the first.
func alsoInside(c *route.Comparison) (lines []string) {
	for t := 1; t < len(c.Prep.Tolerances); t++ {
		var parts clauses
		for i := range c.Results {
			if r := &c.Results[i]; r.Possible && r.Informative {
				parts.Put(r.Route.Name+" ", inHundred(r.Inside[t].Simulated, c.Prep.LeastChance))
			}
		}
		lines = append(lines, fmt.Sprintf("%s, in 100: %s", Within(c.Prep.Tolerances[t]), strings.Join(parts, "; ")))
	}
	return lines
}

// whyNotOthers says of each other route why it is not the one to use.
func whyNotOthers(c *route.Comparison) []page.Block {
	if len(c.Results) < 2 {
		return nil
	}
	why := others(c, func(_ int, r *route.Result) fact { return fact{r.Route.Name, whyNotHere(c, r)} })
	return section("Why not the others", page.Facts{List: why, At: 4 + longestName(c), Indent: 2, Colon: true, Most: 30},
		page.Paragraph{Label: "Chosen by", Text: policyOrder(c.Prep), At: 13})
}

// others are facts of all routes but the one to use.
func others(c *route.Comparison, of func(i int, r *route.Result) fact) (list []fact) {
	for i := range c.Results {
		if i != c.Verdict.Use {
			list = append(list, of(i, &c.Results[i]))
		}
	}
	return list
}

func longestName(c *route.Comparison) int {
	longest := 0
	for i := range c.Results {
		longest = max(longest, min(30, utf8.RuneCountInString(c.Results[i].Route.Name)))
	}
	return longest
}

// whyNot says why a route is not the one to use, and how often it would come closer, where that is
// known.
func whyNot(c *route.Comparison, r *route.Result) string {
	return against(c, r, when(!math.IsNaN(r.Closer), fmt.Sprintf("; closer to the target %s in 100", inHundred(r.Closer, 1))))
}

// against says why a route is not the one to use, and what spoils it; what is said besides
// stands before that.
func against(c *route.Comparison, r *route.Result, besides string) string {
	used := &c.Results[c.Verdict.Use]
	spoilt := besides + "; spoilt by " + spoilers(r)
	switch {
	case !r.Possible:
		return NotPossible(r) + ": " + r.Reason.String()
	case !r.Informative:
		return r.Uninformative.String()
	case !r.Enough(c.Prep.Volume) && used.Enough(c.Prep.Volume):
		return fmt.Sprintf("makes only %s%s", volume(r.MadeML), spoilt)
	case len(r.Inside) == 0:
		return fmt.Sprintf("holds within %s%s%s", quantity.Percent(r.HoldsWithin), alsoOutdone(c, r, used), spoilt)
	case r.Chance() < c.Prep.LeastChance:
		return fmt.Sprintf("%s with a chance of %s in 100, %s asked for%s%s%s", insideWords(c.Prep.Tolerances[0]), chanceOf(c.Prep, r), asked(c.Prep.LeastChance), CloseCall(c.Prep, r), alsoOutdone(c, r, used), spoilt)
	}
	return secondTo(c, r, used) + spoilt
}

// leaves compares what is left over with what leaves less, by the difference where both print alike.
func leaves(mL, other float64) string {
	a, b := volume(mL), volume(other)
	return either(a != b, fmt.Sprintf("leaves %s instead of %s", a, b), fmt.Sprintf("leaves %s more", volume(mL-other)))
}

// noteGrounds are the lists of what the figures rest on, of those that say something; whose a warning is, is said where
// it is not that of the first owner.
func noteGrounds(n *equipment.Notes, owners ...note.Owner) []page.Notes {
	return slices.DeleteFunc([]page.Notes{
		{Label: "Mind", Items: note.JoinedOf(n.Warnings, owners...)},
		{Label: "Assumed", Items: note.Joined(n.Assumed)},
		{Label: "From memory", Items: note.Joined(n.FromMemory)},
		{Label: "Not counted", Items: note.Joined(n.NotCounted)},
	}, func(n page.Notes) bool { return len(n.Items) == 0 })
}
