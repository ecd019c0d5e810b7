package route

import (
	"cmp"
	"slices"
	"strings"

	"minim/equipment"
)

// Hazard is words of the user's for a solution of at least a strength, in the unit of the
// target.
type Hazard struct {
	From  Strength
	Words []string
	// Replaces: from this strength on the words stand in place of those of weaker ones.
	Replaces bool
}

// SolutionHazards are the hazard words that a prep states for a solution of the solute.
// Every list is nil where nothing is stated, which is to be treated as unknown.
type SolutionHazards struct {
	// Solution holds the words for its strength; without any it is to be treated as
	// undiluted.
	Solution []string
	// Undiluted holds the words of the solute itself.
	Undiluted []string
	// StrongByName: no words are stated for its strength, and the solute is known by its name
	// as a strong acid or alkali.
	StrongByName bool
	// Straddled are the strengths, of those from which words hold, that lie inside the
	// interval: the stricter side of each was taken.
	Straddled []Strength
}

// HazardsAt are the words for a solution whose strength lies in an interval, in the unit of
// the target. Words hold where the upper end reaches their strength; a statement
// takes away those of weaker strengths only where the lower end reaches it as well.
func (p *Prep) HazardsAt(lower, upper float64) SolutionHazards {
	h := SolutionHazards{Undiluted: p.Solute.Hazards}
	below := func(x float64, s *Hazard) bool { return x < s.From.Value*(1-1e-9) } // whatever the last digits of a conversion are
	for _, s := range slices.SortedStableFunc(slices.Values(p.Hazards), func(a, b Hazard) int { return cmp.Compare(a.From.Value, b.From.Value) }) {
		if below(upper, &s) {
			break
		}
		switch {
		case below(lower, &s):
			h.Straddled = append(h.Straddled, s.From)
		case s.Replaces:
			h.Solution = nil
		}
		h.Solution = addWords(h.Solution, s.Words)
	}
	if len(h.Solution) > 1 { // what is known counts more than that elsewhere nothing is
		h.Solution = slices.DeleteFunc(h.Solution, NoneKnown)
	}
	h.StrongByName = len(h.Solution) == 0 && len(h.Undiluted) > 0 && p.strongByName()
	return h
}

// strongByName reports whether the solute is known by one of its names as a strong acid or
// alkali.
func (p *Prep) strongByName() bool {
	seen := slices.Concat(equipment.Recognise(p.Solute.Name), equipment.Recognise(p.Solute.WeighedAs))
	return slices.ContainsFunc(seen, func(r equipment.Recognition) bool { return r.Group == "strong acid" || r.Group == "strong alkali" })
}

// NoneKnown reports whether a word is the user's statement that no hazard is known.
func NoneKnown(word string) bool { return strings.EqualFold(strings.TrimSpace(word), "none known") }

// Unknown reports whether nothing is stated that could be said of the solution.
func (h *SolutionHazards) Unknown() bool { return len(h.Solution) == 0 && len(h.Undiluted) == 0 }

// Any reports whether one of the hazards is stated for the solution or for the solute
// undiluted, in whatever words: see [equipment.HazardMeant].
func (h *SolutionHazards) Any(words ...string) bool {
	return slices.ContainsFunc(slices.Concat(h.Solution, h.Undiluted), func(stated string) bool {
		return slices.ContainsFunc(words, func(w string) bool { return equipment.HazardMeant(stated, w) })
	})
}

// Strong reports whether it must be brought into the solvent, never the solvent onto it: it
// is an acid, an alkali or corrosive, by its words or by its name, or nothing is known of it.
func (h *SolutionHazards) Strong() bool {
	return h.Unknown() || h.StrongByName || h.Any("acid", "alkali", "corrosive")
}

// givesOffGas reports whether it must not be closed tightly.
func (h *SolutionHazards) givesOffGas() bool { return h.Any("gas") }

// IntoSolvent reports whether it goes into the solvent, or into what is weaker: it is
// strong, or the gas that it gives off must come little by little.
func (h *SolutionHazards) IntoSolvent() bool { return h.Strong() || h.givesOffGas() }

// addWords appends the words that are not yet there.
func addWords(list, more []string) []string {
	for _, w := range more {
		if !slices.ContainsFunc(list, func(had string) bool { return strings.EqualFold(strings.TrimSpace(had), strings.TrimSpace(w)) }) {
			list = append(list, w)
		}
	}
	return list
}
