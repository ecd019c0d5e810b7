package words

import (
	"fmt"
	"math"
	"strings"

	"minim/equipment/quantity"
	"minim/report/page"
	"minim/report/words/equation"
	"minim/report/words/influence"
	"minim/report/words/inline"
	"minim/uncertainty"
	"minim/uncertainty/rounding"
)

// model has the model equation of the route, the table of all its inputs, and the figures in it
// that are taken as exactly known.
func (p *Paper) model() []page.Block {
	r := p.result()
	e := Written(p.prep(), r, quantity.Number)
	if len(e.Lines) == 0 {
		return nil
	}
	equations := &page.Table{Class: inputsClass, Head: []string{"quantity", "is", "value"}, Numbers: 2}
	for i := range e.Lines {
		l := &e.Lines[i]
		equations.Rows = append(equations.Rows,
			page.Row{Cells: []string{inline.Shown(l.Symbol), "= " + inline.Equation(l.Expression), withUnit(l.Value, l.Of.Unit)}},
			page.Row{Cells: []string{"", Named(l.Of)}, More: true})
	}
	list := section("Model equation", prose("In the order of the steps. Each symbol has a line of its own below it, or stands in the table of inputs or among the figures that are taken as exactly known. Values are those at the estimates of all inputs."), equations)
	if r.Analytic.StandardUncertainty > 0 {
		list = append(list, p.inputs(e)...)
	}
	if len(e.Constants) > 0 {
		list = append(list, section("Figures taken as exactly known", constantsTable(e))...)
	}
	return list
}

// inputsClass is that of tables in small print, of which an entry may have two lines.
const inputsClass = "inputs"

// inputs has one entry for each influence, the largest contribution first.
func (p *Paper) inputs(e *equation.Equation) []page.Block {
	a, unit := &p.result().Analytic, p.prep().Target.Unit.Name
	y := inline.Shown(Letter(p.prep()))
	index := func(letter string) string { return inline.Symbol(letter, "i") }
	t := &page.Table{Class: inputsClass, Numbers: 2, Caption: fmt.Sprintf("All inputs of %s, the largest contribution first. Contributions %s %s are in %s, sensitivity coefficients %[2]s in that per unit of the value", y, index("c"), index("u"), unit),
		Head: []string{"", "input", "value", index("u"), index("ν"), index("c"), index("c") + " " + index("u"), "share"}}
	sets := Sets(a.Budget)
	for i := range a.Budget {
		line := &a.Budget[i]
		if uncertainty.Shape(line.Distribution) == "exact" {
			continue // it is among the constants
		}
		t.Rows = append(t.Rows,
			page.Row{Cells: []string{inline.Shown(e.Symbol(&line.Influence)), influence.Name(&line.Influence), withUnit(uncertainty.SummaryOf(line.Distribution).Mean, line.Unit),
				strings.TrimSpace(rounding.ThreeDigits(line.StandardUncertainty) + " " + line.Unit), degrees(line.DegreesOfFreedom),
				sensitivity(line, a.StandardUncertainty), rounding.ThreeDigits(unlessNothing(line.Contribution, a.StandardUncertainty)), fineShare(line.Share)}},
			page.Row{Cells: []string{"", inputWords(line, unit, sets[i])}, More: true})
	}
	return section("Inputs", t, prose(p.combined(sets)))
}

// sensitivity has three digits.
func sensitivity(line *uncertainty.Contribution, u float64) string {
	if unlessNothing(line.Contribution, u) == 0 {
		return "0"
	}
	return rounding.ThreeDigits(line.Sensitivity)
}

// unlessNothing is a contribution to u, and 0 where it is what rounding left of none.
func unlessNothing(contribution, u float64) float64 {
	if math.Abs(contribution) <= 1e-12*u {
		return 0
	}
	return contribution
}

// inputWords say of an input whose it is, how it is distributed, how that was evaluated and where it
// comes from, and the unit of its sensitivity coefficient.
func inputWords(line *uncertainty.Contribution, unit string, set int) string {
	parts := clauses{influence.Owner(line.Owner), influence.Distributed(&line.Influence), "type " + influence.Type(&line.Influence), influence.Ground(&line.Influence)}
	parts.Add(set > 0, "set %d of readings", set)
	parts.Add(line.Uses > 1, "comes in %d times", line.Uses)
	parts.Put("sensitivity in ", Per(unit, line.Unit))
	return strings.Join(parts, "; ")
}

// combined says how the standard uncertainty, the degrees of freedom and U follow from the table.
func (p *Paper) combined(sets []int) string {
	a, unit := &p.result().Analytic, p.prep().Target.Unit.Name
	u, k := a.Factors()
	y, c, ui, nu := inline.Shown(Letter(p.prep())), inline.Symbol("c", "i"), inline.Symbol("u", "i"), inline.Symbol("ν", "i")
	uc, eff := inline.Symbol("u")+"("+y+")", inline.Symbol("ν", "eff")
	text := fmt.Sprintf("Each input stands once, so that no covariance is left to be added: %s² = Σ (%s %s)², %s = %s %s. ", uc, c, ui, uc, u, unit)
	text += fmt.Sprintf("%s = %s⁴/Σ ((%s %s)⁴/%s) = %s", eff, uc, c, ui, nu, degrees(a.DegreesOfFreedom))
	for i := range sets {
		if sets[i] > 0 {
			text += ", where the inputs of one set of readings are one contribution, the root of the sum of their squares"
			break
		}
	}
	text += fmt.Sprintf("; %s = %s, %s = %s %s = %s %s.", inline.Symbol("k"), k, inline.Symbol("U"), inline.Symbol("k"), uc, rounding.ThreeDigits(a.ExpandedUncertainty), unit)
	second := curved(p.result())
	return text + either(second == "", " Terms of second order do not change it by more than 5 %.", " It is not all: "+second+".")
}

// degrees of freedom, of which 0 means infinitely many.
func degrees(nu float64) string {
	if nu == 0 || nu > 1e4 {
		return "∞"
	}
	return quantity.Decimal(nu, 3)
}

// constantsTable has the figures that are taken as exactly known.
func constantsTable(e *equation.Equation) page.Block {
	t := &page.Table{Class: inputsClass, Head: []string{"", "figure", "value", "source"}, Numbers: 2, WordsLast: true}
	for i := range e.Constants {
		c := &e.Constants[i]
		t.Rows = append(t.Rows, page.Row{Cells: []string{inline.Shown(c.Symbol), Named(c.Of), withUnit(c.Value, c.Of.Unit), influence.Ground(c.Of)}})
	}
	return t
}

// withUnit prints a figure with six digits at most.
func withUnit(x float64, unit string) string {
	return strings.TrimSpace(quantity.Number(x) + " " + strings.Replace(unit, "1/°C", "°C⁻¹", 1))
}
