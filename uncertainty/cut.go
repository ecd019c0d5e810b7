package uncertainty

import (
	"math"

	"minim/uncertainty/portable"
)

// cutAt is the chance with which an error that is known from few readings lies where a
// divisor takes it from.
const cutAt = 0.9999

// CutFactor is how many times s the range is within which an error lies with the chance
// [cutAt] when s comes from readings with so many degrees of freedom.
func CutFactor(degreesOfFreedom float64) float64 { return CoverageFactor(cutAt, degreesOfFreedom) }

// cuts are the greatest errors of the influences that are cut, 0 for the others: a Student t
// that a divisor depends on, for which Most is stated. Its tails would reach zero however
// small s is, and what is divided by it would be anything.
func (m *Model) cuts(needed []bool) []float64 {
	cuts := make([]float64, len(m.influences))
	for i, in := range m.inDivisors(needed) {
		n := &m.nodes[i]
		if !in || n.op != opInfluence {
			continue
		}
		of := &m.influences[n.left]
		if t, student := of.Distribution.(StudentT); student && t.Sigma > 0 && of.Most > 0 {
			cuts[n.left] = min(of.Most, float64(CutFactor(t.Nu)*t.Sigma))
		}
	}
	return cuts
}

// StudentScale is the scale of a [StudentT], 0 of an influence with another distribution.
func (in *Influence) StudentScale() float64 {
	t, _ := in.Distribution.(StudentT)
	return t.Sigma
}

// inDivisors marks the needed nodes that a divisor depends on.
func (m *Model) inDivisors(needed []bool) []bool {
	in := make([]bool, len(needed))
	for i := len(needed) - 1; i >= 0; i-- {
		n := &m.nodes[i]
		if !needed[i] {
			continue
		}
		if n.op >= opSine && in[i] {
			in[n.left] = true
		}
		if n.op >= opAdd && (in[i] || n.op == opDivide) {
			in[n.right] = true
		}
	}
	return in
}

// Cut lists the influences of an output whose greatest errors are cut, since a divisor
// depends on them.
func (m *Model) Cut(out Node) (list []*Influence) {
	for i, cut := range m.cuts(m.reachable(out)) {
		if cut > 0 {
			list = append(list, &m.influences[i])
		}
	}
	return list
}

// uncut are the slopes of the influences that are drawn as they are: a linear part of these
// alone has moments that are known.
func uncut(slopes, cuts []float64) []float64 {
	kept := make([]float64, len(slopes))
	for i, slope := range slopes {
		if cuts[i] == 0 {
			kept[i] = slope
		}
	}
	return kept
}

// normalWithin is the normal value that a uniform one stands for among those within ±c.
func normalWithin(c, uniform float64) float64 {
	part := float64(2*uniform) - 1
	if c < 1e-3 { // where the density is level
		return float64(c * part)
	}
	half := float64(portable.Erf(c/math.Sqrt2) / 2)
	return max(-c, min(portable.NormalQuantile(0.5+float64(half*part)), c))
}
