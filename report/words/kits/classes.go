package kits

import (
	"fmt"
	"slices"
	"strings"

	"minim/equipment"
	"minim/equipment/quantity"
	"minim/report/page"
	"minim/report/words/clause"
)

const classesIntroduction = "Limits of error of new instruments at 20 °C: the error of a piece lies within plus or minus the " +
	"limit, at every mark and every volume set; where the limit is in %, of the volume measured. Random: limit of the standard " +
	"deviation of deliveries. A piston between two sizes has the limits of the larger. The capacity of a standard dropper is one " +
	"drop. What is from memory (*, where it is one figure of a row) was not seen in print: look it up before anything hangs on it. " +
	"Derived: twice the limit of class A, as the standards have it for class B; the row itself was not seen."

// Tables are the class tables, the limits of check weights, the densities of stocks, and what may not meet.
type Tables struct {
	Classes    []equipment.Class
	Weights    []equipment.WeightRow
	Stocks     []*equipment.StockSubstance
	StockRows  []equipment.StockRow
	MayNotMeet []equipment.Incompatible
}

// AllTables are all that minim knows.
func AllTables() *Tables {
	return &Tables{equipment.Classes(), equipment.Weights(), equipment.Stocks(), equipment.StockRows(), equipment.Incompatibles()}
}

// ClassBlocks introduces the class tables, and has each with its sources, the limits of check weights,
// the densities of stocks, and what may not meet.
func ClassBlocks(t *Tables) []page.Block {
	list := []page.Block{page.Paragraph{Text: classesIntroduction}}
	for _, table := range classTables(t.Classes) {
		list = append(list, classBlocks(table)...)
	}
	list = append(list, checkWeights(t.Weights)...)
	list = append(list, stocksKnown(t.Stocks, t.StockRows)...)
	return append(list, mayNotMeet(t.MayNotMeet)...)
}

// classTables groups rows by kind, standard and mark, in the order in which each comes first.
func classTables(rows []equipment.Class) [][]equipment.Class {
	var tables [][]equipment.Class
	for _, row := range rows {
		i := slices.IndexFunc(tables, func(table []equipment.Class) bool { return classHeading(table[0]) == classHeading(row) })
		if i < 0 {
			i = len(tables)
			tables = append(tables, nil)
		}
		tables[i] = append(tables[i], row)
	}
	return tables
}

// classHeading is "cylinder, ISO 4788:2005, In".
func classHeading(c equipment.Class) string {
	switch {
	case c.Kind == "balance":
		return "balance, typical figures"
	case c.Marked == "":
		return kindWords(c.Kind) + ", " + c.Published()
	default:
		return kindWords(c.Kind) + ", " + c.Published() + ", " + c.Marked + supersededBy(", ", &c)
	}
}

func kindWords(kind string) string {
	if table := equipment.Kind(kind).Traits().Table; table == "pipette" {
		return kind + " " + table
	}
	return strings.ReplaceAll(kind, "-", " ")
}

func classBlocks(rows []equipment.Class) []page.Block {
	columns := classColumns(rows)
	t := &page.Table{Numbers: 1, Indent: 2, WordsLast: true}
	for _, column := range columns {
		t.Head = append(t.Head, column.head)
	}
	t.Head = append(t.Head, "trust and sources")
	refs, sources := sourceNumbers(clause.Each(rows, sourcesOf))
	for i, c := range rows {
		cells := clause.Each(columns, func(column classColumn) string { return column.cell(c) })
		t.Rows = append(t.Rows, page.Row{Cells: append(cells, fmt.Sprintf("%-12s%s", c.Trust, refs[i]))})
	}
	return []page.Block{page.Heading{Text: classHeading(rows[0])}, t, numberedSources(sources)}
}

func numberedSources(sources []string) page.Facts {
	f := page.Facts{Indent: 2, At: 7, Bare: true}
	for i, source := range sources {
		f.List = append(f.List, page.Fact{Label: fmt.Sprintf("[%d]", i+1), Text: source})
	}
	return f
}

// sourceNumbers lists the sources of a table once each, and for each row the numbers of
// its own. A row parts its sources by " ; ".
func sourceNumbers(stated []string) (refs, sources []string) {
	for _, row := range stated {
		var numbers []int
		for source := range strings.SplitSeq(row, " ; ") {
			i := slices.Index(sources, source)
			if i < 0 {
				i = len(sources)
				sources = append(sources, source)
			}
			numbers = append(numbers, i+1)
		}
		slices.Sort(numbers)
		refs = append(refs, strings.ReplaceAll(fmt.Sprint(numbers), " ", "] ["))
	}
	return refs, sources
}

// classColumn is a column of a class table; a cell of "" is not filled.
type classColumn struct {
	head string
	cell func(equipment.Class) string
}

// classColumns returns the columns that a table fills, in the unit that suits it.
func classColumns(table []equipment.Class) []classColumn {
	unit, scale := "mL", 1.0
	division, limit, random := "division", "limit", "random"
	switch table[0].Kind {
	case "piston":
		unit, scale = "µL", 1000
	case "balance":
		unit, division, limit, random = "g", "shows", "linearity", "repeatability"
	}
	number := func(x float64) string { return cellNumber(scale * x) }
	columns := []classColumn{
		{"", className},
		{"capacity, " + unit, func(c equipment.Class) string { return number(c.Capacity) }},
		{division + ", " + unit, func(c equipment.Class) string { return recalled(number(c.Division), c.DivisionTrust) }},
		{limit + " below half", belowHalf},
		{limit + ", " + unit, func(c equipment.Class) string {
			if c.Share > 0 {
				return ""
			}
			return number(c.Tolerance)
		}},
		{limit, func(c equipment.Class) string { return cellShare(c.Share) }},
		{random + ", " + unit, func(c equipment.Class) string { return recalled(number(c.Random), c.RandomTrust) }},
		{"dead space, " + unit, func(c equipment.Class) string { return recalled(number(c.DeadSpace), c.DeadSpaceTrust) }},
		{"bore, mm", boreCell},
	}
	filled := columns[:1]
	for _, column := range columns[1:] {
		if slices.ContainsFunc(table, func(c equipment.Class) bool { return column.cell(c) != "" }) {
			filled = append(filled, column)
		}
	}
	return filled
}

// className is "A, tall", "A" or "air".
func className(c equipment.Class) string {
	return strings.Trim(c.Name+", "+c.Form, ", ")
}

// sourcesOf a row are those of its limits and of its bore.
func sourcesOf(c equipment.Class) string {
	r, _ := c.Bores()
	return c.Source + clause.When(r.Source != "", " ; "+r.Source)
}

// boreCell is "11.3 to 14", or the bore of which no range is known.
func boreCell(c equipment.Class) string {
	r, known := c.Bores()
	if !known || r.ByRule || r.Least == r.Greatest {
		return recalled(cellNumber(c.Bore), c.BoreTrust)
	}
	return recalled(cellNumber(r.Least)+" to "+cellNumber(r.Greatest), r.Trust)
}

// belowHalf is "0.15 mL + 1 %".
func belowHalf(c equipment.Class) string {
	return clause.When(c.BelowHalfFixed != 0 || c.BelowHalfShare != 0, cellNumber(c.BelowHalfFixed)+" mL + "+cellShare(c.BelowHalfShare))
}

// recalled marks a figure that is from memory.
func recalled(figure, trust string) string { return figure + clause.When(trust == "from memory", "*") }

func cellShare(x float64) string { return clause.When(x != 0, cellNumber(100*x)+" %") }

// cellNumber prints a figure of a table, nothing for one that is not there.
func cellNumber(x float64) string { return clause.When(x != 0, quantity.Decimal(x, 9)) }
