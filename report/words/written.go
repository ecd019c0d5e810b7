package words

import (
	"math"
	"strconv"

	"minim/report/words/equation"
	"minim/report/words/influence"
	"minim/uncertainty"
	"minim/uncertainty/route"
)

// letters are the symbols of the kinds of quantity that strengths are (ISO 80000-9, from memory).
var letters = map[string]string{
	massConcentration: "γ", amountConcentration: "c", "mass fraction": "w", "volume concentration": "σ", "catalytic activity concentration": "b",
}

// Letter is the symbol of the strength that is wanted.
func Letter(p *route.Prep) string { return letters[quantities[p.Target.Unit.Name]] }

// Written is the measurement model of a route that is possible, in symbols, with numbers as a
// function prints them. It has no lines where the route cannot be evaluated by itself.
func Written(p *route.Prep, r *route.Result, number func(float64) string) *equation.Equation {
	m, strength, err := p.Model(r.Route)
	if err != nil {
		return new(equation.Equation)
	}
	return equation.Of(m, strength, Letter(p), number)
}

// Named says what a quantity of a model is, and in which step it arises.
func Named(in *uncertainty.Influence) string {
	return influence.Name(in) + when(in.Distribution == nil && in.Owner.Kind == uncertainty.OneUse, ", step "+strconv.Itoa(in.Owner.Step))
}

// Per is the unit of a sensitivity coefficient: that of the result over that of the input.
func Per(unit, input string) string { return unit + when(input != "", " per "+input) }

// Sets number the sets of readings in the order of a budget, from 1 on; 0 is for what rests on none.
func Sets(budget []uncertainty.Contribution) []int {
	numbers, seen := make([]int, len(budget)), make(map[uncertainty.Set]int)
	for i := range budget {
		set := budget[i].Set
		if set == (uncertainty.Set{}) {
			continue
		}
		if seen[set] == 0 {
			seen[set] = len(seen) + 1
		}
		numbers[i] = seen[set]
	}
	return numbers
}

// Limits of an influence, infinite where there are none.
func Limits(in *uncertainty.Influence) (low, high float64) {
	if in.Distribution == nil {
		return math.Inf(-1), math.Inf(1)
	}
	s := uncertainty.SummaryOf(in.Distribution)
	return s.Low, s.High
}
