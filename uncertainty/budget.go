package uncertainty

import (
	"cmp"
	"math"
	"slices"
)

// budget lists the influences among the needed nodes, with their contributions
// c, the largest first; equal ones keep the order of the model. A share is
// c_i (R c)_i/u².
func (m *Model) budget(needed []bool, gradient, c, rc []float64, u float64) []Contribution {
	var nodes []int
	for i := range needed {
		if needed[i] && m.nodes[i].op == opInfluence {
			nodes = append(nodes, i)
		}
	}
	slices.SortStableFunc(nodes, func(a, b int) int {
		return cmp.Compare(math.Abs(c[m.nodes[b].left]), math.Abs(c[m.nodes[a].left]))
	})
	uses := m.references(needed)
	lines := make([]Contribution, len(nodes))
	for at, n := range nodes {
		i := m.nodes[n].left
		lines[at] = Contribution{
			Influence: m.influences[i], Uses: uses[n],
			Sensitivity: gradient[i], StandardUncertainty: m.influences[i].Distribution.Summary().StandardUncertainty,
			Contribution: c[i],
		}
		if u > 0 {
			lines[at].Share = float64((c[i] / u) * (rc[i] / u))
		}
	}
	return lines
}

// references counts for each node how many of the needed nodes are made from it.
func (m *Model) references(needed []bool) []int {
	count := make([]int, len(needed))
	for i := range needed {
		n := &m.nodes[i]
		if needed[i] && n.op >= opSine {
			count[n.left]++
		}
		if needed[i] && n.op >= opAdd {
			count[n.right]++
		}
	}
	return count
}

// groupSum is what the influences of one group add up to.
type groupSum struct {
	Group Group
	Sum   float64
}

// ByGroup adds up the shares of the variance by the group of the influences,
// the largest first.
func (a Analytic) ByGroup() []groupSum {
	return a.sums(func(c *Contribution) float64 { return c.Share })
}

// Shifts adds up, by group, by how much the means of the influences move the
// value away from what their nominal values would give, to first order:
//
//	Σ c_i (μ_i - nominal_i)
//
// the largest first; groups that move nothing are left out.
func (a Analytic) Shifts() []groupSum {
	a.Budget = slices.DeleteFunc(slices.Clone(a.Budget), func(c Contribution) bool { return c.Shift() == 0 })
	return a.sums((*Contribution).Shift)
}

// sums adds up what each line of the budget is by groups, the largest first.
func (a Analytic) sums(of func(*Contribution) float64) []groupSum {
	var sums []groupSum
	for i := range a.Budget {
		line := &a.Budget[i]
		at := slices.IndexFunc(sums, func(s groupSum) bool { return s.Group == line.Group })
		if at < 0 {
			sums = append(sums, groupSum{Group: line.Group})
			at = len(sums) - 1
		}
		sums[at].Sum += of(line)
	}
	slices.SortStableFunc(sums, func(a, b groupSum) int { return cmp.Compare(math.Abs(b.Sum), math.Abs(a.Sum)) })
	return sums
}

// Shift is how far the mean of the influence moves the value away from what its
// nominal value would give, to first order.
func (c *Contribution) Shift() float64 {
	return float64(c.Sensitivity * (c.Distribution.Summary().Mean - c.Nominal))
}
