package words

import (
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"minim/equipment"
	"minim/equipment/quantity"
	"minim/report/page"
	"minim/report/words/note"
	"minim/uncertainty/route"
)

// routeTable lists all routes in the order of the prep.
func routeTable(c *route.Comparison) *page.Table {
	names, units := tableHead(c)
	t := &page.Table{Head: names, Units: units, Numbers: 1, Indent: 2, Most: 30, Least: 12}
	for i := range c.Results {
		r := &c.Results[i]
		t.Rows = append(t.Rows, page.Row{Cells: append([]string{r.Route.Name}, cells(c, r)...), Marked: i == c.Verdict.Use})
	}
	return t
}

// tableHead is what the columns hold, in two lines.
func tableHead(c *route.Comparison) (names, units []string) {
	_, unit := soluteUsed(c.Prep, &c.Results[0])
	return []string{"", "strength", "give or take", insideHead(c), "left over", "solute"},
		[]string{"route", c.Prep.Target.Unit.Name, "(" + Asked(c.Settings.Coverage) + " %)", insideUnit(c), "mL", unit}
}

func insideHead(c *route.Comparison) string {
	if len(c.Prep.Tolerances) == 0 {
		return "holds"
	}
	return "inside"
}

func insideUnit(c *route.Comparison) string {
	if len(c.Prep.Tolerances) == 0 {
		return "within"
	}
	return "in 100"
}

// cells of a route after its name: one where there is nothing to tabulate.
func cells(c *route.Comparison, r *route.Result) []string {
	switch {
	case !r.Possible:
		return []string{notPossible(r)}
	case !r.Informative:
		return []string{"says almost nothing about the amount"}
	}
	s := Rounded(r)
	inside := quantity.Percent(r.HoldsWithin)
	if len(r.Inside) > 0 {
		inside = InHundred(r.Chance(), c.Prep.LeastChance)
	}
	solute, _ := soluteUsed(c.Prep, r)
	return []string{s.Value, s.Spread(), inside, quantity.Decimal(r.LeftOverML, 3), quantity.Decimal(solute, 3)}
}

// alsoInside is a line for each tolerance but the first.
func alsoInside(c *route.Comparison) (lines []string) {
	for t := 1; t < len(c.Prep.Tolerances); t++ {
		var parts []string
		for i := range c.Results {
			if r := &c.Results[i]; r.Possible && r.Informative {
				parts = append(parts, fmt.Sprintf("%s %s", r.Route.Name, InHundred(r.Inside[t].Simulated, c.Prep.LeastChance)))
			}
		}
		lines = append(lines, fmt.Sprintf("%s, in 100: %s", tolerance(c.Prep.Tolerances[t]), strings.Join(parts, "; ")))
	}
	return lines
}

// WhyNotOthers says of each other route why it is not the one to use.
func WhyNotOthers(c *route.Comparison) []page.Block {
	if len(c.Results) < 2 {
		return nil
	}
	why := page.Facts{At: 4 + longestName(c), Indent: 2, Colon: true, Most: 30}
	for i := range c.Results {
		if r := &c.Results[i]; i != c.Verdict.Use {
			why.List = append(why.List, page.Fact{r.Route.Name, whyNotHere(c, r)})
		}
	}
	return []page.Block{page.Heading{Text: "Why not the others"}, why}
}

func longestName(c *route.Comparison) int {
	longest := 0
	for i := range c.Results {
		longest = max(longest, min(30, utf8.RuneCountInString(c.Results[i].Route.Name)))
	}
	return longest
}

func whyNot(c *route.Comparison, r *route.Result) string {
	used := &c.Results[c.Verdict.Use]
	spoilt := fmt.Sprintf("; closer to the target in %s of 100; spoilt by %s", InHundred(r.Closer, 1), spoilers(r))
	switch {
	case !r.Possible:
		return notPossible(r) + ": " + r.Reason.String()
	case !r.Informative:
		return r.Uninformative.String()
	case !r.Enough(c.Prep.Volume):
		return fmt.Sprintf("makes only %s%s", Volume(r.MadeML), spoilt)
	case len(r.Inside) == 0:
		return fmt.Sprintf("holds within %s%s", quantity.Percent(r.HoldsWithin), spoilt)
	case r.Chance() < c.Prep.LeastChance:
		return fmt.Sprintf("%s with a chance of %s in 100, asked for is %s%s", insideWords(c.Prep.Tolerances[0]), InHundred(r.Chance(), c.Prep.LeastChance), Asked(c.Prep.LeastChance), spoilt)
	}
	return secondTo(c, r, used) + spoilt
}

// secondTo says why a route that is good enough is not the one to use.
func secondTo(c *route.Comparison, r, used *route.Result) string {
	order, by := c.Prep.Rank(used, r)
	text := "good enough, but "
	switch {
	case order > 0:
		text = "good enough, and would be used if the other had not been chosen by name: "
	case by == route.Alike:
		return "as good in all that decides, chance asked for, left over and measurements; the other stands before it"
	}
	switch by {
	case route.ByLeftOver:
		return text + leaves(r.LeftOverML, used.LeftOverML)
	case route.ByUse:
		return text + "the other makes too little, or says too little of the amount"
	case route.ByOperations:
		return text + fmt.Sprintf("takes %d measurements instead of %d", r.Operations, used.Operations)
	}
	return text + "is inside in " + InHundred(r.Chance(), c.Prep.LeastChance) + " of 100" // the other is not
}

// leaves compares what is left over, by the difference where both print alike.
func leaves(mL, other float64) string {
	switch a, b := Volume(mL), Volume(other); {
	case a != b:
		return fmt.Sprintf("leaves %s instead of %s", a, b)
	case mL < other:
		return fmt.Sprintf("leaves %s less", Volume(other-mL))
	}
	return fmt.Sprintf("leaves %s more", Volume(mL-other))
}

// CautionsOfUse are those of the route to use.
func CautionsOfUse(c *route.Comparison) []string {
	return Cautions(c.Prep, &c.Results[c.Verdict.Use])
}

// ground is a list of what the figures rest on.
type ground struct {
	label string
	list  []string
}

func noteGrounds(n *equipment.Notes) []ground {
	return slices.DeleteFunc([]ground{
		{"Mind", note.Texts(n.Warnings)},
		{"Assumed", note.Texts(n.Assumed)},
		{"From memory", note.Texts(n.FromMemory)},
		{"Not counted", note.Texts(n.NotCounted)},
	}, func(g ground) bool { return len(g.list) == 0 })
}
