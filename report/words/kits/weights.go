package kits

import (
	"fmt"

	"minim/equipment"
	"minim/report/page"
	"minim/report/words/clause"
)

const weightsIntroduction = "Limits of error of weights by OIML R 111, in mg: the conventional mass lies within plus or minus the limit, which is taken as rectangular."

// checkWeights lists the limits of check weights.
func checkWeights(rows []equipment.WeightRow) []page.Block {
	if len(rows) == 0 {
		return nil
	}
	t := &page.Table{Numbers: 1, Indent: 2, WordsLast: true, Head: []string{"", "nominal, g"}}
	t.Head = append(append(t.Head, equipment.WeightClasses()...), "trust and sources")
	refs, sources := sourceNumbers(clause.Each(rows, func(r equipment.WeightRow) string { return r.Source }))
	for i := range rows {
		cells := append([]string{"", cellNumber(rows[i].Nominal)}, clause.Each(rows[i].Limits(), cellNumber)...)
		t.Rows = append(t.Rows, page.Row{Cells: append(cells, fmt.Sprintf("%-12s%s", rows[i].Trust, refs[i]))})
	}
	return []page.Block{page.Heading{Text: "Check weights"}, page.Paragraph{Text: weightsIntroduction}, t, numberedSources(sources)}
}
