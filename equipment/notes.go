package equipment

import (
	"minim/equipment/quantity"
	"minim/report/words/note"
)

// Notes collects what a result rests on besides stated figures, each once and
// in the order in which it came up.
type Notes struct {
	// Warnings are things that a careful worker would want to know.
	Warnings []note.Note
	// Assumed are defaults that stand in for what was not stated.
	Assumed []note.Note
	// FromMemory are class limits whose table row nobody has seen.
	FromMemory []note.Note
	// NotCounted are influences that are left out since nothing is known.
	NotCounted []note.Note
}

// Warn adds a warning.
func (n *Notes) Warn(code, subject string, args ...any) {
	addOnce(&n.Warnings, note.Of(code, subject, args...))
}

// Assume adds an assumption.
func (n *Notes) Assume(code, subject string, args ...any) {
	addOnce(&n.Assumed, note.Of(code, subject, args...))
}

// remember adds a figure that is from memory.
func (n *Notes) remember(code, subject string, args ...any) {
	addOnce(&n.FromMemory, note.Of(code, subject, args...))
}

// LeaveOut adds something that is not counted.
func (n *Notes) LeaveOut(code, subject string, args ...any) {
	addOnce(&n.NotCounted, note.Of(code, subject, args...))
}

// Merge adds the notes of another list.
func (n *Notes) Merge(other Notes) {
	addOnce(&n.Warnings, other.Warnings...)
	addOnce(&n.Assumed, other.Assumed...)
	addOnce(&n.FromMemory, other.FromMemory...)
	addOnce(&n.NotCounted, other.NotCounted...)
}

func addOnce(list *[]note.Note, more ...note.Note) {
	for _, n := range more {
		if !note.Contains(*list, n) {
			*list = append(*list, n)
		}
	}
}

// ML is a volume in mL, and G a mass in g, of a note.
type (
	ML float64
	G  float64
)

func (v ML) String() string { return quantity.Millilitres(float64(v)) }
func (m G) String() string  { return quantity.Grams(float64(m)) }

// Impossible says why an instrument cannot do what a step asks of it. That is
// a finding about a route, not a fault in a file.
type Impossible struct{ Reason note.Note }

func (e *Impossible) Error() string { return e.Reason.String() }

// Cannot is an [Impossible] error, whose reason is made as by [note.Of].
func Cannot(code, subject string, args ...any) error {
	return &Impossible{note.Of(code, subject, args...)}
}
