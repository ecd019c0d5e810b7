package equipment

import "slices"

// Notes collects what a result rests on besides stated figures, each once and
// in the order in which it came up.
type Notes struct {
	// Warnings are things that a careful worker would want to know.
	Warnings []string
	// Assumed are defaults that stand in for what was not stated.
	Assumed []string
	// FromMemory are class limits whose table row nobody has seen.
	FromMemory []string
	// NotCounted are influences that are left out since nothing is known.
	NotCounted []string
}

// Warn adds a warning.
func (n *Notes) Warn(text string) { addOnce(&n.Warnings, text) }

// Assume adds an assumption.
func (n *Notes) Assume(text string) { addOnce(&n.Assumed, text) }

// Remember adds a figure that is from memory.
func (n *Notes) Remember(text string) { addOnce(&n.FromMemory, text) }

// LeaveOut adds something that is not counted.
func (n *Notes) LeaveOut(text string) { addOnce(&n.NotCounted, text) }

// Merge adds the notes of another list.
func (n *Notes) Merge(other Notes) {
	for _, text := range other.Warnings {
		n.Warn(text)
	}
	for _, text := range other.Assumed {
		n.Assume(text)
	}
	for _, text := range other.FromMemory {
		n.Remember(text)
	}
	for _, text := range other.NotCounted {
		n.LeaveOut(text)
	}
}

func addOnce(list *[]string, text string) {
	if !slices.Contains(*list, text) {
		*list = append(*list, text)
	}
}
