package words

import (
	"fmt"
	"slices"
	"strings"

	"minim/equipment"
	"minim/equipment/quantity"
	"minim/report/page"
	"minim/report/words/clause"
	"minim/uncertainty/route"
)

// changes says what is changed in the kit of a prep: "0.01 g scale: readability =
// 0.001 g", several of them joined by "; ". It is empty for a kit as it is.
func changes(p *route.Prep) string { return strings.Join(ChangeTexts(p), "; ") }

// ChangeTexts are the changes in the kit, one by one.
func ChangeTexts(p *route.Prep) []string {
	return clause.Each(p.Changes, func(c equipment.Change) string { return fmt.Sprintf("%s: %s = %s", c.Name, c.Key, c.Value) })
}

// changed says what the first screen supposes to be other than it is.
func changed(p *route.Prep) string {
	return fmt.Sprintf("%s (%s stays as it is)", changes(p), quantity.Printable(p.Kit.File)) + staying(p)
}

// staying says what is left out for a change, and what stays as the kit states it, where it would
// follow from a change if it were not stated; "" where nothing does.
func staying(p *route.Prep) string {
	var text clauses
	for _, c := range p.Changes {
		keys := p.Kit.Staying(c, p.Changes)
		for i, key := range keys {
			keys[i] = either(key == "limit", "own limit of error", key)
		}
		text.Add(c.Replaces != "", "; of the %s, its %s %s left out", c.Name, c.Replaces, either(c.Replaces == "readings", "are", "is"))
		text.Add(len(keys) > 0, "; of the %s, %s %s as stated", c.Name, strings.Join(keys, " and "), plural(keys, "stays", "stay"))
	}
	return strings.Join(text, "")
}

// effect is what changes in a kit do: c is the comparison with them, and before
// the one without, of the same routes.
type effect struct{ c, before *route.Comparison }

// title of the section.
func (e effect) title() string {
	return either(len(e.c.Prep.Changes) > 1, "What the changes do", "What the change does")
}

// differs reports whether a route gives other figures than before, to the digits
// that are shown.
func (e effect) differs(i int) bool {
	return !slices.Equal(cells(routeColumns(e.before), &e.before.Results[i]), cells(routeColumns(e.c), &e.c.Results[i]))
}

// cells are those of a route before and now, the names of both left out.
func (e effect) cells(i int) (before, now []string) {
	old, after := &e.before.Results[i], &e.c.Results[i]
	before, now = cells(strengthColumns(e.before), old), cells(strengthColumns(e.c), after)
	if len(after.Inside) == 0 || len(now) == 1 {
		return before, now
	}
	if len(before) == 1 {
		return before, append(now, "")
	}
	return append(before, ""), append(now, gain(after.Chance()-old.Chance()))
}

// gain prints a difference of two chances, in a hundred.
func gain(x float64) string {
	text := fmt.Sprintf("%+.1f", 100*x)
	return either(text == "+0.0" || text == "-0.0", "0.0", text)
}

// facts say what becomes of the route to use, and which routes give the same.
func (e effect) facts() []fact {
	var same []string
	for i := range e.c.Results {
		if !e.differs(i) {
			same = append(same, e.c.Results[i].Route.Name)
		}
	}
	list := []fact{{"Verdict", e.verdict()}}
	switch len(same) {
	case 0:
		return list
	case len(e.c.Results):
		return append(list, fact{"No change", "in any route, to the digits shown" + staying(e.c.Prep)})
	}
	return append(list, fact{"No change", strings.Join(same, "; ")})
}

// ChangeVerdict says what changes in a kit make of the route to use.
func ChangeVerdict(c, before *route.Comparison) string { return effect{c, before}.verdict() }

func (e effect) verdict() string {
	before, now := chosen(e.before), chosen(e.c)
	return either(before == now, "as before: "+now, fmt.Sprintf("before: %s; now: %s", before, now))
}

// chosen is "USE two dilutions".
func chosen(c *route.Comparison) string {
	if c.Verdict.Use < 0 {
		return "no route is possible"
	}
	return VerdictWord(c) + " " + c.Results[c.Verdict.Use].Route.Name
}

// whatChanged is the section about what changes do.
func whatChanged(c, before *route.Comparison) []page.Block {
	e := effect{c, before}
	list := section(e.title())
	if t := e.table(); len(t.Rows) > 0 {
		list = append(list, t)
	}
	return append(list, page.Facts{List: e.facts(), At: 13, Indent: 2})
}

// table has, for each route that differs, what it gave before and what it gives now.
func (e effect) table() *page.Table {
	columns := append([]column{{}}, strengthColumns(e.c)...)
	if len(e.c.Prep.Tolerances) > 0 {
		columns = append(columns, column{head: "change", unit: "in 100"})
	}
	t := tableOf("route", columns)
	t.Numbers, t.Least, t.NameWidth = 2, 6, longestName(e.c)
	for i := range e.c.Results {
		if e.differs(i) {
			before, now := e.cells(i)
			t.Rows = append(t.Rows,
				page.Row{Cells: append([]string{e.c.Results[i].Route.Name, "before"}, before...), Marked: i == e.c.Verdict.Use},
				page.Row{Cells: append([]string{"", "now"}, now...)})
		}
	}
	return t
}
