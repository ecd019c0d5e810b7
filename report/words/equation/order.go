package equation

import (
	"cmp"
	"slices"

	"minim/uncertainty"
)

// inOrder are the quantities on the way in the order of the steps; in each step what is made of
// others comes before these, so that each symbol is met before it is explained.
func (w *writer) inOrder() (list []uncertainty.Node) {
	steps := make([]int, len(w.terms))
	step := int(^uint(0) >> 1)
	for i := len(w.terms) - 1; i >= 0; i-- {
		t := &w.terms[i]
		if t.Op != 0 && t.Of != nil && t.Of.Owner.Kind == uncertainty.OneUse {
			step = t.Of.Owner.Step
		}
		if steps[i] = step; t.Op != 0 && w.symbols[i] != "" {
			list = append(list, uncertainty.Node(i))
		}
	}
	slices.SortStableFunc(list, func(a, b uncertainty.Node) int { return cmp.Compare(steps[a], steps[b]) })
	return list
}
