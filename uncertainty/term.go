package uncertainty

// Term is how a quantity of a model is made, for those who write the model down.
type Term struct {
	// Op is '+', '-', '*' or '/' of Left and Right, 's' or 'c' for the sine and the cosine of Left,
	// and 0 of an influence or a constant.
	Op          byte
	Left, Right Node
	// Of is the influence, or what [Model.Name] says of the quantity; nil where it says nothing.
	Of *Influence
	// Value at the means of all influences.
	Value float64
	// Uses counts how many quantities are made from it, 1 for the output itself; 0 of what the
	// output does not depend on.
	Uses int
}

// IsInput reports whether it is an influence, and IsConstant whether it is an exactly known number.
func (t *Term) IsInput() bool    { return t.Op == 0 && t.Of != nil && t.Of.Distribution != nil }
func (t *Term) IsConstant() bool { return t.Op == 0 && !t.IsInput() }

// Terms are the quantities up to an output, each at its node.
func (m *Model) Terms(out Node) []Term {
	needed, values := m.reachable(out), m.values(out, mean)
	uses := m.references(needed)
	uses[out]++
	terms := make([]Term, len(needed))
	for i := range terms {
		n, t := &m.nodes[i], &terms[i]
		if !needed[i] {
			continue
		}
		*t = Term{Of: m.names[Node(i)], Value: values[i], Uses: uses[i]}
		switch n.op {
		case opConstant:
		case opInfluence:
			t.Of = &m.influences[n.left]
		default:
			t.Op, t.Left, t.Right = signs[n.op], n.left, n.right
		}
	}
	return terms
}

// signs are how operations are written.
var signs = map[op]byte{opSine: 's', opCosine: 'c', opAdd: '+', opSubtract: '-', opMultiply: '*', opDivide: '/'}
