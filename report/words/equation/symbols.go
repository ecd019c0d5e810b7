package equation

import (
	"strconv"
	"strings"

	"minim/report/words/influence"
	"minim/uncertainty"
)

// alike are quantities with one letter.
type alike struct {
	base string
	list []uncertainty.Node
}

// setSymbols gives a symbol to the output, to each input, and to what has a name on the way.
func (w *writer) setSymbols(out uncertainty.Node, symbol string) {
	w.symbols = make([]string, len(w.terms))
	var letters []*alike
	of := make(map[string]*alike)
	for i := range w.terms {
		t := &w.terms[i]
		if t.Uses == 0 || t.Of == nil || uncertainty.Node(i) == out || dissolves(t) {
			continue
		}
		base := influence.Symbol(t.Of)
		if of[base] == nil {
			of[base] = &alike{base: base}
			letters = append(letters, of[base])
		}
		of[base].list = append(of[base].list, uncertainty.Node(i))
	}
	for _, a := range letters {
		w.tell(a, a.base == symbol)
	}
	w.symbols[out] = symbol
}

// tell numbers quantities with one letter: by their steps where each has one of its own, else in
// their order. Exact figures that are one and the same have one symbol. A single one has no number,
// unless the letter is also that of the output.
func (w *writer) tell(a *alike, taken bool) {
	groups := w.same(a.list)
	bySteps := w.stepsDiffer(groups)
	for i, group := range groups {
		first := &w.terms[group[0]]
		text := a.base
		onTheWay := first.Op != 0
		if len(groups) > 1 || taken || onTheWay && bySteps {
			number := i + 1
			if bySteps {
				number = first.Of.Owner.Step
			}
			separator := "_"
			if strings.Contains(a.base, "_") {
				separator = ","
			}
			text += separator + strconv.Itoa(number)
		}
		for _, n := range group {
			w.symbols[n] = text
		}
	}
}

// same puts constants together that are one and the same figure.
func (w *writer) same(list []uncertainty.Node) (groups [][]uncertainty.Node) {
	type figure struct {
		code  uncertainty.Code
		group uncertainty.Group
		value float64
	}
	at := make(map[figure]int)
	for _, n := range list {
		t := &w.terms[n]
		f := figure{t.Of.Code, t.Of.Group, t.Value}
		if k, found := at[f]; found && t.IsConstant() {
			groups[k] = append(groups[k], n)
			continue
		}
		if t.IsConstant() {
			at[f] = len(groups)
		}
		groups = append(groups, []uncertainty.Node{n})
	}
	return groups
}

// stepsDiffer reports whether each belongs to a step of its own.
func (w *writer) stepsDiffer(groups [][]uncertainty.Node) bool {
	seen := make(map[int]bool)
	for _, group := range groups {
		o := w.terms[group[0]].Of.Owner
		if o.Kind != uncertainty.OneUse || o.Step == 0 || seen[o.Step] {
			return false
		}
		seen[o.Step] = true
	}
	return true
}
