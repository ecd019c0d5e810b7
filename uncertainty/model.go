package uncertainty

import (
	"fmt"
	"slices"

	"minim/uncertainty/portable"
)

// Node is one quantity of a model: a constant, an influence, or the result of
// an operation on two earlier nodes. A Node is only meaningful together with
// the Model that returned it.
type Node int

// Influence is an input quantity of the measurement model (JCGM 100, 4.1.2).
type Influence struct {
	// Code says what it is, "reading" or "bias". At tells apart what an owner has several
	// of: the mark of a bias in mL, the number of a reading.
	Code Code
	At   float64
	// Owner says whose it is: an instrument piece, a material, the day, or
	// this one use. Two influences of the same owner and code are one
	// quantity: every use sees the same draw, and that alone makes the
	// correlations between results.
	Owner Owner
	// Group is what the influence counts towards when shares are added up,
	// such as the instrument that it belongs to, and so what it is an influence of.
	Group Group
	// Unit is the unit of the distribution, for printing.
	Unit string
	// Distribution is the state of knowledge about the quantity.
	Distribution Distribution
	// DegreesOfFreedom of the standard uncertainty; 0 means infinite.
	DegreesOfFreedom float64
	// Set of readings that the standard uncertainty was found from, where others were found
	// from the same.
	Set Set
	// Most is the greatest error that can be where a divisor depends on a [StudentT], 0 where
	// nothing is known of it: it is cut there, and at the range of [CutFactor].
	Most float64
	// Nominal is the value that the plan intends: 0 for an error.
	Nominal float64
	// Ground is what its figures rest on.
	Ground Ground
	// Assumed marks an influence that rests on a default, not on a statement. AssumedShape: of
	// its distribution the shape alone does, and not the limits.
	Assumed, AssumedShape bool
	// AssumedPart of what is known of it rests on what is assumed, and the rest on readings; 0 stands
	// for all of it.
	AssumedPart float64
	// Flat is its distribution with a rectangular shape in place of the assumed one, nil for the
	// rectangle between its limits.
	Flat Distribution
}

// flat is the distribution with a rectangular shape in place of the assumed one.
func (in *Influence) flat() Distribution {
	if in.Flat != nil {
		return in.Flat
	}
	s := in.Distribution.Summary()
	return Rectangular{Low: s.Low, High: s.High}
}

// op is the kind of a node.
type op uint8

const (
	opConstant op = iota
	opInfluence
	// Operations on one node.
	opSine
	opCosine
	// Operations on two nodes.
	opAdd
	opSubtract
	opMultiply
	opDivide
)

// node holds one or two operands, or the index of an influence in left, or the
// value of a constant.
type node struct {
	op          op
	left, right Node
	value       float64
}

// Model is a list of nodes, each made from earlier ones. The zero value is an
// empty model, ready to use. A Model may be read by several goroutines at
// once, but not extended meanwhile.
type Model struct {
	// AssumedFactor multiplies the standard uncertainties of all influences that are
	// assumed, to see what rests on them; 0 leaves them as they are. Where the shape alone
	// is assumed, any factor above 1 makes it rectangular, and one below leaves it. It must
	// be set before the first influence.
	AssumedFactor float64

	nodes      []node
	influences []Influence
	keys       []uint64 // of the random streams of the influences
	scales     []scale  // of the sets of readings
	scaleOf    []int    // the scale of each influence, -1 for none
	known      map[Identity]Node
	names      map[Node]*Influence
	groups     []correlated
	numbers    map[Owner]uint64
	counts     map[Kind]uint64
	changed    map[int]Influence // as they were described
}

// Influence returns the node of an influence. Asking again for the same owner
// and code returns the same node; it panics when the second description
// differs from the first, since one quantity has one distribution.
func (m *Model) Influence(in Influence) Node {
	in.mustBeSound()
	switch f := m.AssumedFactor; {
	case in.AssumedShape && f > 1:
		in.Distribution = in.flat()
	case in.Assumed && !in.AssumedShape && f > 0:
		in.Distribution = in.Distribution.Widened(f)
	}
	id := in.Identity()
	if n, ok := m.known[id]; ok {
		i := int(m.nodes[n].left)
		if m.unchanged(i) != in {
			panic(fmt.Sprintf("uncertainty: influence %q of %q described in two ways", in.Code, in.Owner.Name))
		}
		return n
	}
	if m.known == nil {
		m.known, m.influences = make(map[Identity]Node, usual), make([]Influence, 0, usual)
	}
	m.influences = append(m.influences, in)
	m.keys = append(m.keys, m.streamKey(&in))
	m.scaleOf = append(m.scaleOf, m.scaleFor(&in))
	n := m.append(node{op: opInfluence, left: Node(len(m.influences) - 1)})
	m.known[id] = n
	return n
}

// usual is how many influences a route has at least; most have no more than twice as many.
const usual = 32

func (in *Influence) mustBeSound() {
	if in.Distribution == nil {
		panic(fmt.Sprintf("uncertainty: influence %q has no distribution", in.Code))
	}
	if !in.Distribution.Sound() || !portable.IsFinite(in.Nominal) {
		panic(fmt.Sprintf("uncertainty: influence %q: %#v is not a distribution", in.Code, in.Distribution))
	}
}

// Constant returns a node with an exactly known value.
func (m *Model) Constant(value float64) Node {
	return m.append(node{op: opConstant, value: value})
}

// Add returns the node of the sum of one or more nodes.
func (m *Model) Add(first Node, rest ...Node) Node {
	for _, n := range rest {
		first = m.append(node{op: opAdd, left: first, right: n})
	}
	return first
}

// Subtract returns the node a - b.
func (m *Model) Subtract(a, b Node) Node { return m.append(node{op: opSubtract, left: a, right: b}) }

// Multiply returns the node a * b.
func (m *Model) Multiply(a, b Node) Node { return m.append(node{op: opMultiply, left: a, right: b}) }

// Divide returns the node a / b. That b cannot be zero is checked when the
// model is evaluated: see [ZeroDivisorError].
func (m *Model) Divide(a, b Node) Node { return m.append(node{op: opDivide, left: a, right: b}) }

// Name says what a node is, and of what, for messages and for those who write the model down, and
// returns the node. What it is named as has no distribution.
func (m *Model) Name(n Node, as Influence) Node {
	if m.names == nil {
		m.names = make(map[Node]*Influence)
	}
	m.names[n] = &as
	return n
}

func (m *Model) append(n node) Node {
	if n.op >= opSine {
		m.mustHold(n.left)
	}
	if n.op >= opAdd {
		m.mustHold(n.right)
	}
	m.nodes = append(m.nodes, n)
	return Node(len(m.nodes) - 1)
}

func (m *Model) mustHold(n Node) {
	if n < 0 || int(n) >= len(m.nodes) {
		panic(fmt.Sprintf("uncertainty: node %d is not of this model", n))
	}
}

// reachable marks the nodes that any of outs depends on, themselves included.
func (m *Model) reachable(outs ...Node) []bool {
	for _, out := range outs {
		m.mustHold(out)
	}
	needed := make([]bool, slices.Max(outs)+1)
	for _, out := range outs {
		needed[out] = true
	}
	for i := len(needed) - 1; i >= 0; i-- {
		n := &m.nodes[i]
		if needed[i] && n.op >= opSine {
			needed[n.left] = true
		}
		if needed[i] && n.op >= opAdd {
			needed[n.right] = true
		}
	}
	return needed
}
