package kits

import (
	"fmt"
	"strings"

	"minim/equipment"
	"minim/report/page"
)

const stocksIntroduction = "Density of solutions in water at 20 °C by their strength in % w/w: bottles of that strength lie within the limit. Between two rows " +
	"the apparent specific volume of the solute goes in a straight line. A density does not say a strength: two solutions of acetic acid have the same, and " +
	"sulphuric acid from 95 to 98 % nearly the same. Where labels count one of two things, both are named."

// stocksKnown lists the densities of stocks, a table for each substance.
func stocksKnown(list []*equipment.StockSubstance, rows []equipment.StockRow) []page.Block {
	if len(list) == 0 {
		return nil
	}
	blocks := []page.Block{page.Heading{Text: "Well-known stocks"}, page.Paragraph{Text: stocksIntroduction}}
	for _, s := range list {
		blocks = append(blocks, stockBlocks(s, rows)...)
	}
	return blocks
}

func stockBlocks(s *equipment.StockSubstance, all []equipment.StockRow) []page.Block {
	var rows []equipment.StockRow
	var stated []string
	for _, r := range all {
		if r.Name == s.Name {
			rows, stated = append(rows, r), append(stated, r.Source)
		}
	}
	refs, sources := sourceNumbers(stated)
	t := &page.Table{Numbers: 1, Indent: 2, WordsLast: true, Head: []string{"", "% w/w", "g/mL", "limit, g/mL", "trust and sources"}}
	for i, r := range rows {
		t.Rows = append(t.Rows, page.Row{Cells: []string{r.Bottle, cellNumber(r.Percent), cellNumber(r.Density), cellNumber(r.Limit), fmt.Sprintf("%-12s%s", r.Trust, refs[i])}})
	}
	list := []page.Block{page.Heading{Text: s.Name + ", as " + strings.Join(s.Forms(), " or ")}, t, numberedSources(sources)}
	if said := stockNote(s); said != "" {
		list = append(list, page.Paragraph{Text: said})
	}
	return list
}

// stockNote is how the two ways to count a substance compare, and what else is to be known.
func stockNote(s *equipment.StockSubstance) string {
	var said []string
	if s.AlsoAs != "" {
		said = append(said, fmt.Sprintf("The table counts %s: 1 g of %s holds %s g of it (%s; %s).", s.As, s.AlsoAs, cellNumber(s.AlsoHolds), s.Source, s.Trust))
	}
	if s.Note != "" {
		said = append(said, strings.ToUpper(s.Note[:1])+s.Note[1:]+".")
	}
	return strings.Join(said, " ")
}
