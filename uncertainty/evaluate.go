package uncertainty

import "minim/uncertainty/portable"

// Expected returns the value of a node at the means of all influences.
func (m *Model) Expected(out Node) float64 {
	return m.values(out, mean)[out]
}

func mean(in *Influence) float64 { return in.Distribution.Summary().Mean }

// Intended returns the value of a node at the nominal values: what the plan
// has in mind, with every error zero.
func (m *Model) Intended(out Node) float64 {
	return m.values(out, func(in *Influence) float64 { return in.Nominal })[out]
}

// values evaluates the nodes up to out with each influence at the point that
// at gives for it.
func (m *Model) values(out Node, at func(*Influence) float64) []float64 {
	m.mustHold(out)
	v := make([]float64, out+1)
	for i := range v {
		n := &m.nodes[i]
		switch {
		case n.op == opConstant:
			v[i] = n.value
		case n.op == opInfluence:
			v[i] = at(&m.influences[n.left])
		default:
			v[i] = n.of(v[n.left], v[n.right])
		}
	}
	return v
}

// of is the operation of a node on the values of its operands.
func (n *node) of(a, b float64) float64 {
	switch n.op {
	case opSine, opCosine:
		f, _ := n.op.unary(a)
		return f
	case opAdd:
		return a + b
	case opSubtract:
		return a - b
	case opMultiply:
		return a * b
	default:
		return a / b
	}
}

// gradient returns the exact partial derivatives of out with respect to every
// influence of the model, by one reverse sweep over the nodes, at the values v
// of the nodes.
func (m *Model) gradient(out Node, v []float64) []float64 {
	g := make([]float64, len(m.influences))
	adjoint := make([]float64, out+1)
	adjoint[out] = 1
	for i := out; i >= 0; i-- {
		a := adjoint[i]
		if a == 0 {
			continue
		}
		n := &m.nodes[i]
		switch n.op {
		case opInfluence:
			g[n.left] += a
		case opSine, opCosine:
			_, slope := n.op.unary(v[n.left])
			adjoint[n.left] += float64(a * slope)
		case opAdd:
			adjoint[n.left] += a
			adjoint[n.right] += a
		case opSubtract:
			adjoint[n.left] += a
			adjoint[n.right] -= a
		case opMultiply:
			adjoint[n.left] += float64(a * v[n.right])
			adjoint[n.right] += float64(a * v[n.left])
		case opDivide:
			q := a / v[n.right]
			adjoint[n.left] += q
			adjoint[n.right] -= float64(q * v[i])
		}
	}
	return g
}

// unary is an operation on one node at its operand x, with its first derivative; the second
// and the third are minus these.
func (o op) unary(x float64) (f, slope float64) {
	sin, cos := portable.Sincos(x)
	if o == opSine {
		return sin, cos
	}
	return cos, -sin
}
