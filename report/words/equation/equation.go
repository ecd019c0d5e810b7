package equation

import (
	"minim/report/words/influence"
	"minim/uncertainty"
)

// Equation is a model as it is written down.
type Equation struct {
	// Lines are the equation of the output, and below it one for each quantity that it names.
	Lines []Line
	// Constants are figures that are taken as exactly known, known corrections among them.
	Constants []Constant
	symbols   map[uncertainty.Identity]string
}

// Line is one equation: the symbol of a quantity, and what it is worked out from.
type Line struct {
	Symbol, Expression string
	// Of says what the quantity is, and Value what it comes to at the means of all inputs.
	Of    *uncertainty.Influence
	Value float64
}

// Constant is an exactly known figure.
type Constant struct {
	Symbol string
	Of     *uncertainty.Influence
	Value  float64
}

// Symbol of an influence; "" of one that is not in the model.
func (e *Equation) Symbol(in *uncertainty.Influence) string { return e.symbols[identity(in)] }

// identity of an influence, whatever its route is called.
func identity(in *uncertainty.Influence) uncertainty.Identity {
	of := *in
	switch of.Owner.Kind {
	case uncertainty.OneUse, uncertainty.Tare, uncertainty.Rung, uncertainty.Day:
		of.Owner.Name = ""
	}
	return of.Identity()
}

// Of writes a model down. The output has the symbol that is given, and numbers are printed by a function.
func Of(m *uncertainty.Model, out uncertainty.Node, symbol string, number func(float64) string) *Equation {
	w := &writer{terms: m.Terms(out), number: number}
	w.setSymbols(out, symbol)
	e := &Equation{symbols: make(map[uncertainty.Identity]string)}
	e.Lines = []Line{w.line(out)}
	for _, n := range w.inOrder() {
		if n != out {
			e.Lines = append(e.Lines, w.line(n))
		}
	}
	for i := range w.terms {
		switch t := &w.terms[i]; {
		case w.symbols[i] == "" || t.Op != 0:
		case t.IsConstant():
			e.addConstant(Constant{w.symbols[i], t.Of, t.Value})
		default:
			e.symbols[identity(t.Of)] = w.symbols[i]
			if uncertainty.SummaryOf(t.Of.Distribution).StandardUncertainty == 0 {
				e.addConstant(Constant{w.symbols[i], t.Of, t.Value})
			}
		}
	}
	return e
}

// addConstant leaves out those that are nothing, and those that are there already.
func (e *Equation) addConstant(c Constant) {
	for i := range e.Constants {
		if e.Constants[i].Symbol == c.Symbol {
			return
		}
	}
	if c.Value != 0 {
		e.Constants = append(e.Constants, c)
	}
}

func (w *writer) line(n uncertainty.Node) Line {
	return Line{w.symbols[n], w.sum(n), w.terms[n].Of, w.terms[n].Value}
}

// dissolves reports whether a quantity is written out in the equation of the only one that needs it,
// and has no equation of its own: the strengths of solutions on the way.
func dissolves(t *uncertainty.Term) bool {
	switch t.Of.Code {
	case "concentration of a solution", "concentration of a stock", "fraction of a solution", "strength in a unit", "purity":
		return t.Op != 0 && t.Uses == 1
	}
	return t.Op != 0 && influence.Symbol(t.Of) == influence.Symbol(new(uncertainty.Influence))
}
