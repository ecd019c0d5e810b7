package strengths

import (
	"cmp"
	"slices"

	"minim/equipment"
)

// Solubility in g/mL of a solute, At a temperature in °C, where that is stated.
type Solubility struct {
	Concentration float64
	At            equipment.Stated
}

// EasilyDissolved is the part of the solubility up to which solutions are made without being asked for: what is
// nearer dissolves slowly, and comes out where it grows colder (common practice, no source).
const EasilyDissolved = 0.9

// Soluble is how much dissolves at the coldest temperature of a bench, or at the warmest where less
// does then; 0 where nothing is stated. Without a temperature of the bench the least that is stated
// counts. It is not known in the cold where it is stated for warmer temperatures alone, or without
// one and the bench may be colder than 20 °C.
func Soluble(list []Solubility, coldest, warmest equipment.Stated) (most float64, known bool) {
	list = slices.SortedFunc(slices.Values(list), func(a, b Solubility) int { return cmp.Compare(a.At.Value, b.At.Value) })
	switch {
	case len(list) == 0:
		return 0, true
	case !list[0].At.Known:
		return list[0].Concentration, !coldest.Known || coldest.Value >= 20
	case !coldest.Known:
		return slices.MinFunc(list, func(a, b Solubility) int { return cmp.Compare(a.Concentration, b.Concentration) }).Concentration, true
	}
	return min(soluble(list, coldest.Value), soluble(list, warmest.Value)), coldest.Value >= list[0].At.Value
}

// soluble is the solubility at a temperature, in a straight line between two that are stated, and
// beyond them as there.
func soluble(list []Solubility, t float64) float64 {
	i := slices.IndexFunc(list, func(s Solubility) bool { return s.At.Value >= t })
	switch {
	case i == 0:
		return list[0].Concentration
	case i < 0:
		return list[len(list)-1].Concentration
	}
	low, high := list[i-1], list[i]
	share := (t - low.At.Value) / (high.At.Value - low.At.Value)
	return low.Concentration + float64(share*(high.Concentration-low.Concentration))
}
