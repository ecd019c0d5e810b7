package uncertainty

import "slices"

// correlated is a group of influences with a correlation matrix (JCGM 100, 5.2.2): estimates
// that were obtained together, such as means of readings taken in sets. They are normal,
// and form a multivariate normal distribution (JCGM 101, 6.4.8); where they have degrees of
// freedom, a multivariate t-distribution, all over one root of a chi-square value (6.4.9;
// JCGM 102, 5.3.2, from memory). Each influence belongs
// to one group at most. No model of a route has one: what is shared by several uses needs
// no coefficient, since asking for an influence again gives the same node.
type correlated struct {
	members []int // indexes of the influences
	// r is the correlation matrix, root its symmetric square root, row by row.
	r, root [][]float64
	// nu is the number of degrees of freedom that the estimates have in common, 0 for
	// infinitely many.
	nu float64
}

// correlate returns R c for a vector with one entry for each influence, where R
// is the correlation matrix of all influences. Without groups it is c itself.
func (m *Model) correlate(c []float64) []float64 {
	if len(m.groups) == 0 {
		return c
	}
	rc := slices.Clone(c)
	for _, g := range m.groups {
		for i, a := range g.members {
			sum := 0.0
			for j, b := range g.members {
				sum += float64(g.r[i][j] * c[b])
			}
			rc[a] = sum
		}
	}
	return rc
}

// groupOf returns the group that an influence is correlated in and its row
// there, or -1.
func (m *Model) groupOf(influence int) (group, row int) {
	for k, g := range m.groups {
		if row := slices.Index(g.members, influence); row >= 0 {
			return k, row
		}
	}
	return -1, -1
}

func (m *Model) isCorrelated(influence int) bool {
	group, _ := m.groupOf(influence)
	return group >= 0
}
