package uncertainty

// hessianTimes returns the second derivatives of out along a direction: H d, one
// entry for each influence, where d has one entry for each influence as well.
// It is the derivative along d of the reverse sweep that gives the gradient.
func (m *Model) hessianTimes(out Node, v, d []float64, w *sweep) []float64 {
	w.forward(m, v, d)
	clear(w.adjoint)
	clear(w.tangentAdjoint)
	h := make([]float64, len(m.influences))
	w.adjoint[out] = 1
	for i := int(out); i >= 0; i-- {
		n := &m.nodes[i]
		if n.op == opInfluence {
			h[n.left] += w.tangentAdjoint[i]
			continue
		}
		if w.adjoint[i] != 0 || w.tangentAdjoint[i] != 0 {
			w.reverse(n, i, v)
		}
	}
	return h
}

// sweep is the scratch space of hessianTimes: for each node its derivative along
// the direction, the derivative of out by it, and that one's derivative along
// the direction.
type sweep struct{ tangent, adjoint, tangentAdjoint []float64 }

func newSweep(out Node) *sweep {
	return &sweep{make([]float64, out+1), make([]float64, out+1), make([]float64, out+1)}
}

func (w *sweep) forward(m *Model, v, d []float64) {
	t := w.tangent
	for i := range t {
		n := &m.nodes[i]
		switch n.op {
		case opConstant:
			t[i] = 0
		case opInfluence:
			t[i] = d[n.left]
		case opAdd:
			t[i] = t[n.left] + t[n.right]
		case opSubtract:
			t[i] = t[n.left] - t[n.right]
		case opMultiply:
			t[i] = times(t[n.left], v[n.right]) + times(v[n.left], t[n.right])
		case opDivide:
			t[i] = (t[n.left] - times(v[i], t[n.right])) / v[n.right]
		default:
			_, slope := n.op.unary(v[n.left])
			t[i] = slope * t[n.left]
		}
	}
}

func (w *sweep) reverse(n *node, i int, v []float64) {
	a, ta, t := w.adjoint, w.tangentAdjoint, w.tangent
	l, r := n.left, n.right
	switch n.op {
	case opAdd:
		a[l] += a[i]
		a[r] += a[i]
		ta[l] += ta[i]
		ta[r] += ta[i]
	case opSubtract:
		a[l] += a[i]
		a[r] -= a[i]
		ta[l] += ta[i]
		ta[r] -= ta[i]
	case opMultiply:
		al, ar := times(a[i], v[r]), times(a[i], v[l])
		tl, tr := times(ta[i], v[r])+times(a[i], t[r]), times(ta[i], v[l])+times(a[i], t[l])
		a[l] += al
		a[r] += ar
		ta[l] += tl
		ta[r] += tr
	case opDivide:
		q := a[i] / v[r]
		tq := (ta[i] - times(q, t[r])) / v[r]
		a[l] += q
		ta[l] += tq
		a[r] -= times(q, v[i])
		ta[r] -= times(tq, v[i]) + times(q, t[i])
	case opSine, opCosine:
		f, slope := n.op.unary(v[l])
		a[l] += times(a[i], slope)
		ta[l] += times(ta[i], slope) + times(times(a[i], -f), t[l])
	}
}
