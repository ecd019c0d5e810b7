package uncertainty

import "slices"

// Histogram counts the trials between each two neighbours of edges, which must
// rise: count i holds the values v with edges[i] <= v < edges[i+1]. Below and
// above count what lies outside.
func (mc *MonteCarlo) Histogram(edges []float64) (counts []int, below, above int) {
	at := make([]int, len(edges))
	for i, e := range edges {
		at[i], _ = slices.BinarySearch(mc.sorted, e)
	}
	counts = make([]int, len(edges)-1)
	for i := range counts {
		counts[i] = at[i+1] - at[i]
	}
	return counts, at[0], len(mc.sorted) - at[len(at)-1]
}
