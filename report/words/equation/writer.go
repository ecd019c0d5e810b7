package equation

import (
	"math"
	"slices"
	"strings"

	"minim/report/words/clause"
	"minim/uncertainty"
)

// writer writes nodes as expressions.
type writer struct {
	terms   []uncertainty.Term
	symbols []string
	number  func(float64) string
}

// product is a number times and over factors.
type product struct {
	by         float64
	over, divs []string
}

// sum writes a node out: what it is made of, in symbols.
func (w *writer) sum(n uncertainty.Node) string {
	number, addends := w.addends(n)
	var b strings.Builder
	if number != 0 || len(addends) == 0 {
		addends = append([]product{{by: number}}, addends...)
	}
	for i, p := range addends {
		switch {
		case p.by < 0 && i == 0:
			b.WriteString("−")
		case p.by < 0:
			b.WriteString(" − ")
		case i > 0:
			b.WriteString(" + ")
		}
		b.WriteString(w.text(p))
		if unit := w.unit(n); len(p.over)+len(p.divs) == 0 && unit != "" {
			b.WriteString(" " + unit)
		}
	}
	return b.String()
}

// addends of a node that is written out: a number, and products.
func (w *writer) addends(n uncertainty.Node) (number float64, list []product) {
	t := &w.terms[n]
	var take func(n uncertainty.Node, sign float64)
	take = func(n uncertainty.Node, sign float64) {
		t := &w.terms[n]
		if w.symbols[n] == "" && (t.Op == '+' || t.Op == '-') {
			take(t.Left, sign)
			take(t.Right, clause.Either(t.Op == '-', -sign, sign))
			return
		}
		p := w.factors(n)
		p.by = float64(p.by * sign)
		switch {
		case len(p.over)+len(p.divs) == 0:
			number += p.by
		case p.by != 0:
			list = append(list, p)
		}
	}
	switch t.Op {
	case '+', '-':
		take(t.Left, 1)
		take(t.Right, clause.Either(t.Op == '-', -1, 1.0))
	default:
		p := w.writtenOut(n)
		if len(p.over)+len(p.divs) == 0 {
			return p.by, nil
		}
		list = append(list, p)
	}
	return number, list
}

// factors of a node as it stands in an expression: its symbol where it has one.
func (w *writer) factors(n uncertainty.Node) product {
	t := &w.terms[n]
	switch {
	case w.symbols[n] != "" && t.IsConstant() && t.Value == 0:
		return product{}
	case w.symbols[n] != "":
		return product{by: 1, over: []string{w.symbols[n]}}
	}
	return w.writtenOut(n)
}

// writtenOut are the factors of a node without regard to its own symbol.
func (w *writer) writtenOut(n uncertainty.Node) product {
	t := &w.terms[n]
	switch t.Op {
	case '*':
		a, b := w.factors(t.Left), w.factors(t.Right)
		return cancelled(float64(a.by*b.by), slices.Concat(a.over, b.over), slices.Concat(a.divs, b.divs))
	case '/':
		a, b := w.factors(t.Left), w.factors(t.Right)
		return cancelled(a.by/b.by, slices.Concat(a.over, b.divs), slices.Concat(a.divs, b.over))
	case '+', '-':
		number, addends := w.addends(n)
		switch {
		case len(addends) == 0:
			return product{by: number}
		case len(addends) == 1 && number == 0:
			return addends[0]
		}
		return product{by: 1, over: []string{"(" + w.sum(n) + ")"}}
	case 's', 'c':
		return product{by: 1, over: []string{clause.Either(t.Op == 's', "sin", "cos") + "(" + w.sum(t.Left) + ")"}}
	}
	return product{by: t.Value}
}

// cancelled is a product without factors that it is both multiplied and divided by.
func cancelled(by float64, over, divs []string) product {
	p := product{by: by}
	for _, factor := range over {
		if at := slices.Index(divs, factor); at >= 0 {
			divs = slices.Delete(divs, at, at+1)
		} else {
			p.over = append(p.over, factor)
		}
	}
	p.divs = divs
	return p
}

// text of a product without its sign.
func (w *writer) text(p product) string {
	by := math.Abs(p.by)
	over := p.over
	if by != 1 || len(over) == 0 {
		over = append([]string{w.number(by)}, over...)
	}
	text := strings.Join(over, "·")
	switch len(p.divs) {
	case 0:
		return text
	case 1:
		return text + "/" + p.divs[0]
	}
	return text + "/(" + strings.Join(p.divs, "·") + ")"
}

// unit of a node: that of the first of its parts that tells it.
func (w *writer) unit(n uncertainty.Node) string {
	t := &w.terms[n]
	if t.Of != nil && (t.IsInput() || t.Of.Unit != "" || t.IsConstant()) {
		return t.Of.Unit
	}
	switch t.Op {
	case '+', '-':
		if unit := w.unit(t.Left); unit != "" {
			return unit
		}
		return w.unit(t.Right)
	case '*':
		return times(w.unit(t.Left), w.unit(t.Right))
	}
	return ""
}

// times is the unit of a product, as far as a sum needs it: mm times mL/mm is mL.
func times(a, b string) string {
	for _, unit := range []string{a, b} { // what is converted has the unit that it is converted to
		if to, _, found := strings.Cut(unit, " / ("); found {
			return times("", to)
		}
	}
	if strings.Contains(a+b, " ") {
		return a + b
	}
	var over, divs []string
	for _, unit := range []string{a, b} {
		top, below, _ := strings.Cut(unit, "/")
		over, divs = append(over, top), append(divs, below)
	}
	var left []string
	for _, top := range over {
		if at := slices.Index(divs, top); at >= 0 {
			divs[at] = ""
		} else if top != "1" {
			left = append(left, top)
		}
	}
	text := strings.Join(left, " ")
	for _, below := range divs {
		if below != "" {
			text += "/" + below
		}
	}
	return text
}
