package uncertainty

import (
	"math"

	"minim/uncertainty/portable"
)

// axis is a direction in the space of the influences along which an independent
// quantity of unit variance moves: one influence in units of its u, or a mixture
// of influences that are correlated.
type axis struct {
	of                 *Influence
	skewness, kurtosis float64
	parts              []part
	// g, h and third are the first three derivatives of the output along the
	// axis; others is Σ g_j ∂³f/∂a_j∂a² over all axes a_j, this one included.
	// They are in units of the largest g, so that no square runs out of range.
	g, h, third, others float64
}

// part is by how much an influence moves along an axis.
type part struct {
	influence int
	amount    float64
}

func (a *axis) write(d []float64) {
	for _, p := range a.parts {
		d[p.influence] = p.amount
	}
}

func (a *axis) erase(d []float64) {
	for _, p := range a.parts {
		d[p.influence] = 0
	}
}

// along is the component of a vector of derivatives along the axis.
func (a *axis) along(derivatives []float64) float64 {
	sum := 0.0
	for _, p := range a.parts {
		sum += times(p.amount, derivatives[p.influence])
	}
	return sum
}

// axes returns those that the needed nodes depend on, with their slopes g in
// units of the largest, which is scale; 1 when all are 0.
func (m *Model) axes(needed []bool, gradient []float64) (axes []axis, scale float64) {
	uses := make([]bool, len(m.influences))
	for i := range needed {
		if needed[i] && m.nodes[i].op == opInfluence {
			uses[m.nodes[i].left] = true
		}
	}
	for i := range m.influences {
		in := &m.influences[i]
		s := in.Distribution.Summary()
		if !uses[i] || s.StandardUncertainty == 0 || m.isCorrelated(i) {
			continue
		}
		a := axis{of: in, parts: []part{{i, s.StandardUncertainty}}, kurtosis: 3}
		if _, student := in.Distribution.(StudentT); !student {
			a.skewness, a.kurtosis = s.Skewness, s.Kurtosis
		}
		axes = append(axes, a)
	}
	for _, g := range m.groups {
		axes = append(axes, m.axesOf(g)...)
	}
	for i := range axes {
		axes[i].g = axes[i].along(gradient)
		scale = max(scale, math.Abs(axes[i].g))
	}
	if !(scale > 0) || !portable.IsFinite(1/scale) {
		scale = 1
	}
	for i := range axes {
		axes[i].g /= scale
	}
	return axes, scale
}

// axesOf returns the columns of the square root of the covariance matrix.
func (m *Model) axesOf(g correlated) []axis {
	axes := make([]axis, len(g.members))
	for j := range axes {
		axes[j] = axis{of: &m.influences[g.members[j]], kurtosis: 3}
		for i, influence := range g.members {
			u := m.influences[influence].Distribution.Summary().StandardUncertainty
			axes[j].parts = append(axes[j].parts, part{influence, times(u, g.root[i][j])})
		}
	}
	return axes
}

// setCurvatures works out the second and third derivatives of out along each
// axis, by one pass over the nodes with jets: s runs along the axis, t along
// Σ g_j a_j.
func (m *Model) setCurvatures(out Node, needed []bool, axes []axis, scale float64) {
	t := make([]float64, len(m.influences))
	for i := range axes {
		for _, p := range axes[i].parts {
			t[p.influence] += times(axes[i].g, p.amount)
		}
	}
	s := make([]float64, len(m.influences))
	jets := make([]jet, out+1)
	for i := range axes {
		a := &axes[i]
		a.write(s)
		end := m.jetAt(out, needed, s, t, jets)
		a.erase(s)
		a.h, a.third, a.others = 2*end.ss/scale, 6*end.sss/scale, 2*end.sst/scale
	}
}

// jetAt evaluates the needed nodes at the means of the influences, with steps
// along s and t.
func (m *Model) jetAt(out Node, needed []bool, s, t []float64, jets []jet) jet {
	for i := range jets {
		n := &m.nodes[i]
		switch {
		case !needed[i]:
		case n.op == opConstant:
			jets[i] = jet{f: n.value}
		case n.op == opInfluence:
			jets[i] = jet{f: mean(&m.influences[n.left]), s: s[n.left], t: t[n.left]}
		default:
			jets[i] = n.jet(jets)
		}
	}
	return jets[out]
}
