package words

import (
	"fmt"
	"slices"

	"minim/equipment/quantity"
	"minim/report/page"
	"minim/uncertainty/rounding"
	"minim/uncertainty/route"
)

// ladder lists the rungs of the ladder that is made from the route to use.
func ladder(c *route.Comparison) []page.Block {
	rungs := c.Results[c.Verdict.Use].Ladder
	if len(rungs) == 0 {
		return nil
	}
	t := &page.Table{Head: []string{"rung", "take", "strength", "give or take", "ratio to the last", "give or take"}, Numbers: 1, Indent: 2}
	for i := range rungs {
		t.Rows = append(t.Rows, page.Row{Cells: rungRow(&rungs[i])})
	}
	return []page.Block{page.Heading{Text: "Ladder", Lead: ladderWords(c)}, t}
}

// ladderWords say how the rungs are made.
func ladderWords(c *route.Comparison) string {
	l := c.Prep.Ladder
	text := fmt.Sprintf("from this solution: an aliquot with the %s, made up to %s in the %s", l.With.Name,
		quantity.Millilitres(l.In.Capacity), l.In.Name)
	any := func(has func(r *route.Rung) bool) bool {
		rungs := c.Results[c.Verdict.Use].Ladder
		return slices.ContainsFunc(rungs, func(r route.Rung) bool { return has(&r) })
	}
	text += when(any(func(r *route.Rung) bool { return r.IntoSolvent }), fmt.Sprintf("; some of the %s goes first, and the aliquot into it", c.Prep.Solvent.Name))
	text += when(any(func(r *route.Rung) bool { return r.Bath }), ", where it is more than a quarter of the whole in a beaker in a cold bath, transferred with rinsing when at room temperature")
	return text + when(any(func(r *route.Rung) bool { return r.Gas }), "; mix it open, in a fume cupboard")
}

func rungRow(r *route.Rung) []string {
	name := r.Strength.Text
	if !r.Reason.None() {
		return []string{name, "not possible: " + r.Reason.String()}
	}
	if !r.Uninformative.None() {
		return []string{name, volume(r.TakeML), "says almost nothing: " + r.Uninformative.String()}
	}
	value, u := rounding.Expanded(r.Analytic.Value, r.Analytic.ExpandedUncertainty)
	row := []string{name, volume(r.TakeML), value, u, "", ""}
	if r.Ratio != nil {
		row[4], row[5] = rounding.Expanded(r.Ratio.Value, r.Ratio.ExpandedUncertainty)
	}
	return row
}
