package data

import (
	"minim/uncertainty/route"
)

// soluteGrams is nil where the mass of the solute is not known.
func soluteGrams(r *route.Result) *number {
	if r.SoluteGrams == 0 && r.SoluteUsed > 0 {
		return nil
	}
	return some(r.SoluteGrams)
}

// gramDigits is a cell of a table of data, empty where the mass is not known.
func gramDigits(r *route.Result) string {
	if soluteGrams(r) == nil {
		return ""
	}
	return digits(r.SoluteGrams)
}
