package mixed

import (
	"math"

	"minim/equipment"
)

// counts is a share of a volume by which solutions shrink, or grow, that counts: 0.1 % is what good glass
// tells (common practice, no source).
const counts = 1e-3

// Dissolved are so many grams of a solute in so many mL of a solution in water.
type Dissolved struct{ Grams, ML float64 }

// Shrinking is the Share of their volumes by which two solutions take up less together, negative where
// they take up more, the half-width Within which it is known, and how far the table is to be trusted at
// the strongest of them.
type Shrinking struct {
	Share, Within float64
	Trust         string
}

// Shrinks is by how much two solutions of a solute, in a form, shrink when they are mixed, by the
// apparent specific volumes φ of a table at their strengths and at that of both together:
//
//	(m1 φ1 + m2 φ2 - (m1 + m2) φ12)/(V1 + V2)
//
// within what the limits of the table leave. It is nothing without a table or a volume, and where it is less
// than counts.
func Shrinks(t *equipment.StockSubstance, form string, a, b Dissolved) (s Shrinking) {
	volume, most := a.ML+b.ML, 0.0
	if t == nil || !(a.ML > 0 && b.ML > 0) {
		return Shrinking{}
	}
	for i, part := range []Dissolved{a, b, {a.Grams + b.Grams, volume}} {
		grams := part.Grams * t.Holds(form)
		if !(grams > 0) {
			continue
		}
		w := t.Fraction(grams / part.ML)
		at := t.At(w)
		share := grams * at.SpecificVolume / volume
		if i == 2 {
			share = -share
		}
		if s.Share, s.Within = s.Share+share, s.Within+float64(grams*at.Spread/volume); w > most {
			most, s.Trust = w, at.Trust
		}
	}
	if !(math.Abs(s.Share) >= counts) {
		return Shrinking{}
	}
	return s
}
