package words

import (
	"strconv"

	"minim/equipment/quantity"
	"minim/report/page"
	"minim/report/words/clause"
	"minim/uncertainty/route"
)

// column is what a table says of each of several results: its head in two lines, and a cell.
type column struct {
	head, unit string
	cell       func(r *route.Result) string
}

// tableOf is a table with the names of results in the first column; rows come later.
func tableOf(name string, columns []column) *page.Table {
	t := &page.Table{Head: []string{""}, Units: []string{name}, Numbers: 1, Indent: 2, Most: 30, Least: 12}
	for _, c := range columns {
		t.Head, t.Units = append(t.Head, c.head), append(t.Units, c.unit)
	}
	return t
}

// cellsOf a result, after its name.
func cellsOf(columns []column, r *route.Result) []string {
	return clause.Each(columns, func(c column) string { return c.cell(r) })
}

// strengthColumns are the strength, and what it may be off by.
func strengthColumns(c *route.Comparison) []column {
	return []column{
		{"strength", c.Prep.Target.Unit.Name, func(r *route.Result) string { return state(r).Value }},
		{"give or take", "(" + asked(c.Settings.Coverage) + " %)", func(r *route.Result) string { return state(r).spread() }},
		insideColumn(c.Prep),
	}
}

// insideColumn is the chance of being inside, or what a strength holds within where there is
// no tolerance.
func insideColumn(p *route.Prep) column {
	none := len(p.Tolerances) == 0
	return column{either(none, "holds", "inside"), either(none, "within", "in 100"), func(r *route.Result) string { return insideOr(p, r) }}
}

func soluteColumn(c *route.Comparison) column {
	_, unit := soluteUsed(c.Prep, &c.Results[0])
	return column{"solute", unit, func(r *route.Result) string {
		solute, _ := soluteUsed(c.Prep, r)
		return quantity.Decimal(solute, 3)
	}}
}

func leftOver(r *route.Result) string { return quantity.Decimal(r.LeftOverML, 3) }

func times(r *route.Result) string { return strconv.Itoa(r.Operations) }

// RowLetter is the letter of a row: a to z, then a number.
func RowLetter(i int) string {
	if i < 26 {
		return string(rune('a' + i))
	}
	return strconv.Itoa(i + 1)
}
