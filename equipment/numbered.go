package equipment

import (
	"math"
	"strconv"
	"strings"

	"minim/uncertainty/portable"
)

// number fills in how far apart the numbered marks of a scale are, where that is not
// stated: as in the row of the class table for the piece, unless that does not go with the
// division that is stated. Without a row it follows from the division; for what states none,
// from the capacity.
func (k *Measure) number(class float64) {
	switch {
	case k.Numbered > 0 || !k.Kind.Traits().Numbers:
	case class > 0 && (k.Division == 0 || isMultiple(class, k.Division)):
		k.Numbered = class
	case k.Division > 0:
		k.Numbered = numberedByDivision(k.Division, k.Capacity)
	case !k.Kind.Traits().Scale && k.Capacity > 0:
		k.Numbered = numberedBySize(k.Capacity)
	}
}

// fewestNumbers that a scale shows: more lines are numbered rather than fewer
// than that.
const fewestNumbers = 4

// numberedByDivision is the distance in mL of the numbered marks of a scale: ten
// divisions, but five where the division is 2 times a power of ten (the rule of
// ISO 384, from memory); and less where that would leave fewer than four numbers.
func numberedByDivision(division, capacity float64) float64 {
	lines, found := linesByFigure[leadingFigure(division)]
	if !found {
		lines = []float64{10, 5, 2, 1}
	}
	for _, n := range lines {
		if capacity/(n*division) >= fewestNumbers*(1-1e-12) {
			return decimal(n * division)
		}
	}
	return division
}

// linesByFigure are the divisions from one number to the next, the most first, by the leading
// figure of the division where that matters.
var linesByFigure = map[float64][]float64{2: {5, 1}, 2.5: {10, 4, 2, 1}, 5: {10, 2, 1}}

// numberedBySize is the greatest distance in mL, 1 or 5 times a power of ten, that
// puts four numbers or more on a scale: what syringes show (from memory).
func numberedBySize(capacity float64) float64 {
	step := math.Pow10(portable.Decade(capacity / fewestNumbers * (1 + 1e-9)))
	if 5*step*fewestNumbers <= capacity*(1+1e-12) {
		step *= 5
	}
	return decimal(step)
}

// leadingFigure is x without its power of ten, from 1 to 10: 2.5 of 0.025.
func leadingFigure(x float64) float64 {
	mantissa, _, _ := strings.Cut(strconv.FormatFloat(x, 'e', 14, 64), "e")
	figure, err := strconv.ParseFloat(mantissa, 64)
	if err != nil {
		panic("equipment: " + err.Error())
	}
	return figure
}
