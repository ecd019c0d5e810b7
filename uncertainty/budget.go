package uncertainty

import (
	"cmp"
	"math"
	"slices"
)

// budget lists the influences that out depends on, with their contributions,
// the largest first; equal ones keep the order of the model.
func (m *Model) budget(out Node, gradient []float64) []Contribution {
	needed := m.reachable(out)
	uses := m.references(needed)
	var lines []Contribution
	for i := range needed {
		n := &m.nodes[i]
		if !needed[i] || n.op != opInfluence {
			continue
		}
		in := m.influences[n.left]
		u := in.Distribution.StandardUncertainty()
		c := gradient[n.left]
		lines = append(lines, Contribution{
			Influence: in, Uses: uses[i],
			Sensitivity: c, StandardUncertainty: u, Contribution: c * u,
		})
	}
	slices.SortStableFunc(lines, func(a, b Contribution) int {
		return cmp.Compare(math.Abs(b.Contribution), math.Abs(a.Contribution))
	})
	if u := combine(lines); u > 0 {
		for i := range lines {
			r := lines[i].Contribution / u
			lines[i].Share = r * r
		}
	}
	return lines
}

// references counts for each node how many of the needed nodes are made from it.
func (m *Model) references(needed []bool) []int {
	count := make([]int, len(needed))
	for i := range needed {
		if n := &m.nodes[i]; needed[i] && n.op >= opAdd {
			count[n.left]++
			count[n.right]++
		}
	}
	return count
}

// AssumedShare is the part of the variance that rests on assumed influences.
func (a Analytic) AssumedShare() float64 {
	share := 0.0
	for i := range a.Budget {
		if a.Budget[i].Assumed {
			share += a.Budget[i].Share
		}
	}
	return share
}

// ByGroup adds up the shares of the variance by the group of the influences,
// the largest first.
func (a Analytic) ByGroup() []GroupShare {
	var sums []GroupShare
	for i := range a.Budget {
		line := &a.Budget[i]
		at := slices.IndexFunc(sums, func(s GroupShare) bool { return s.Group == line.Group })
		if at < 0 {
			sums = append(sums, GroupShare{Group: line.Group})
			at = len(sums) - 1
		}
		sums[at].Share += line.Share
	}
	slices.SortStableFunc(sums, func(a, b GroupShare) int { return cmp.Compare(b.Share, a.Share) })
	return sums
}

// GroupShare is the part of a variance that comes from one group.
type GroupShare struct {
	Group string
	Share float64
}

// Shifts adds up, by group, by how much the means of the influences move the
// value away from what their nominal values would give, to first order:
//
//	Σ c_i (μ_i - nominal_i)
//
// the largest first; groups that move nothing are left out.
func (a Analytic) Shifts() []GroupShift {
	var sums []GroupShift
	for i := range a.Budget {
		line := &a.Budget[i]
		shift := line.Shift()
		if shift == 0 {
			continue
		}
		at := slices.IndexFunc(sums, func(s GroupShift) bool { return s.Group == line.Group })
		if at < 0 {
			sums = append(sums, GroupShift{Group: line.Group})
			at = len(sums) - 1
		}
		sums[at].Shift += shift
	}
	slices.SortStableFunc(sums, func(a, b GroupShift) int { return cmp.Compare(math.Abs(b.Shift), math.Abs(a.Shift)) })
	return sums
}

// Shift is how far the mean of the influence moves the value away from what its
// nominal value would give, to first order.
func (c *Contribution) Shift() float64 {
	return c.Sensitivity * (c.Distribution.Mean() - c.Nominal)
}

// GroupShift is how far the known errors of one group move a value.
type GroupShift struct {
	Group string
	Shift float64
}
