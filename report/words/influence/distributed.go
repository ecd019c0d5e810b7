package influence

import (
	"math"
	"strings"

	"minim/equipment/quantity"
	"minim/report/words/clause"
	"minim/uncertainty"
	"minim/uncertainty/rounding"
)

// Distributed says how an input is distributed: its shape with the limits, where it has them.
func Distributed(in *uncertainty.Influence) string {
	s := uncertainty.SummaryOf(in.Distribution)
	shape := Shape(in)
	if in.AssumedShape {
		shape += clause.Either(uncertainty.Shape(in.Distribution) == "table", " (that the limit is triangular is assumed)", " (the shape is assumed)")
	}
	if in.Set != (uncertainty.Set{}) && uncertainty.Shape(in.Distribution) == "table" {
		shape += " (u for σ = s)"
	}
	if code := string(in.Code); strings.HasPrefix(code, "linearity at a load") || strings.HasPrefix(code, "curve of linearity") {
		shape += " (the split of the linearity and the shape are judgement)"
	}
	show := func(x float64) string { return quantity.Number(quantity.Round(x, 4)) }
	unit := clause.When(in.Unit != "", " "+in.Unit)
	switch bounded := !math.IsInf(s.Low, 0) && !math.IsInf(s.High, 0); {
	case bounded && math.Abs(s.Low+s.High) <= 1e-12*s.High:
		return shape + " within ±" + show(s.High) + unit
	case bounded:
		return shape + " from " + show(s.Low) + " to " + show(s.High) + unit
	case uncertainty.Shape(in.Distribution) == "normal" || uncertainty.Shape(in.Distribution) == "t":
		return shape + " with s = " + rounding.ThreeDigits(s.StandardUncertainty) + unit
	}
	return shape
}
