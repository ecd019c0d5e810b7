// Package hazards has the words for the dangers of a solution, from which strength on they hold,
// and what may not meet. It knows no prep; what is not stated is unknown, never harmless.
package hazards

import (
	"cmp"
	"slices"
	"strings"

	"minim/uncertainty/strengths"
)

// Stated are words of the user's for a solution of at least a strength, in the unit of the
// target.
type Stated struct {
	From  strengths.Strength
	Words []string
	// Replaces: from this strength on the words stand in place of those of weaker ones.
	Replaces bool
}

// OfSolution are the hazard words that a prep states for a solution of the solute.
// Every list is nil where nothing is stated, which is to be treated as unknown.
type OfSolution struct {
	// Solution holds the words for its strength; without any it is to be treated as
	// undiluted.
	Solution []string
	// Undiluted holds the words of the solute itself.
	Undiluted []string
	// StrongByName: no words are stated for its strength, and the solute is known by its name
	// as a strong acid or alkali.
	StrongByName bool
	// Kind is "acid" or "alkali" where the solute is known by its name as a strong one, and Vapour what the
	// solution gives off that must not be breathed, nil where none is known.
	Kind   string
	Vapour *Vapour
	// Straddled are the strengths, of those from which words hold, that lie inside the
	// interval: the stricter side of each was taken.
	Straddled []strengths.Strength
}

// At are the words for a solution whose strength lies in an interval, in the unit of those
// from which words are stated, of a solute with words of its own. Words hold where the upper end reaches their strength; a statement
// takes away those of weaker strengths only where the lower end reaches it as well.
func At(stated []Stated, undiluted []string, lower, upper float64) OfSolution {
	h := OfSolution{Undiluted: undiluted}
	below := func(x float64, s *Stated) bool { return x < s.From.Value*(1-1e-9) } // whatever the last digits of a conversion are
	for _, s := range slices.SortedStableFunc(slices.Values(stated), func(a, b Stated) int { return cmp.Compare(a.From.Value, b.From.Value) }) {
		if below(upper, &s) {
			break
		}
		switch {
		case below(lower, &s):
			h.Straddled = append(h.Straddled, s.From)
		case s.Replaces:
			h.Solution = nil
		}
		h.Solution = Add(h.Solution, s.Words)
	}
	if len(h.Solution) > 1 { // what is known counts more than that elsewhere nothing is
		h.Solution = slices.DeleteFunc(h.Solution, NoneKnown)
	}
	return h
}

// NoneKnown reports whether a word is the user's statement that no hazard is known.
func NoneKnown(word string) bool { return strings.EqualFold(strings.TrimSpace(word), "none known") }

// Unknown reports whether nothing is stated that could be said of the solution.
func (h *OfSolution) Unknown() bool { return len(h.Solution) == 0 && len(h.Undiluted) == 0 }

// Any reports whether one of the hazards is stated for the solution or for the solute
// undiluted, in whatever words: see [Meant].
func (h *OfSolution) Any(words ...string) bool {
	return slices.ContainsFunc(slices.Concat(h.Solution, h.Undiluted), func(stated string) bool {
		return slices.ContainsFunc(words, func(w string) bool { return Meant(stated, w) })
	})
}

// Strong reports whether it must be brought into the solvent, never the solvent onto it: it
// is an acid, an alkali or corrosive, by its words or by its name, or nothing is known of it.
func (h *OfSolution) Strong() bool {
	return h.Unknown() || h.StrongByName || h.Any("acid", "alkali", "corrosive")
}

// Is reports whether it is an acid, or an alkali, by its words or by its name.
func (h *OfSolution) Is(kind string) bool { return h.Kind == kind || h.Any(kind) }

// GivesOffGas reports whether it must not be closed tightly.
func (h *OfSolution) GivesOffGas() bool { return h.Any("gas") }

// IntoSolvent reports whether it goes into the solvent, or into what is weaker: it is
// strong, or the gas that it gives off must come little by little.
func (h *OfSolution) IntoSolvent() bool { return h.Strong() || h.GivesOffGas() }

// Add appends the words that are not yet there.
func Add(list, more []string) []string {
	for _, w := range more {
		if !slices.ContainsFunc(list, func(had string) bool { return strings.EqualFold(strings.TrimSpace(had), strings.TrimSpace(w)) }) {
			list = append(list, w)
		}
	}
	return list
}

// Both are the words of two statements: what one knows counts more than that the other knows
// of none.
func Both(a, b []string) []string {
	words := Add(slices.Clone(a), b)
	if len(words) > 1 {
		words = slices.DeleteFunc(words, NoneKnown)
	}
	return words
}
