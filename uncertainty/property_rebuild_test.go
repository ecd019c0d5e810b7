package uncertainty

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"

	"minim/uncertainty/distribution"
)

// rebuild makes the part of a model that an output needs again, in another model.
type rebuild struct {
	old, new *Model
	// first decides for two operands which is made first, and swapped whether
	// those of + and × change places.
	rightFirst, swapped func() bool
	// influence makes an influence again.
	influence func(index int) Node
	at        map[Node]Node
}

// shuffled is the same model with nodes, influences and members of groups in
// another order, and operands of + and × changed about.
func shuffled(t *testing.T, random *rand.Rand, m *Model, out Node) (*Model, Node) {
	coin := func() bool { return random.IntN(2) == 0 }
	r := &rebuild{old: m, new: new(Model), rightFirst: coin, swapped: coin, at: make(map[Node]Node)}
	r.influence = func(i int) Node { return r.new.Influence(m.influences[i]) }
	out = r.node(out)
	r.correlate(t, random.Perm)
	return r.new, out
}

// rescaled is the same model with each influence in another unit, the factor
// times smaller, and multiplied back where it is used.
func rescaled(t *testing.T, m *Model, out Node, factor func() float64) (*Model, Node) {
	never := func() bool { return false }
	r := &rebuild{old: m, new: new(Model), rightFirst: never, swapped: never, at: make(map[Node]Node)}
	r.influence = func(i int) Node {
		in, by := m.influences[i], factor()
		in.Distribution, in.Nominal = inUnits(in.Distribution, by), in.Nominal*by
		return r.new.Divide(r.new.Influence(in), r.new.Constant(by))
	}
	// One by one, so that the order of the influences, and of sums, stays.
	for i, needed := range m.reachable(out) {
		if needed {
			r.node(Node(i))
		}
	}
	out = r.node(out)
	r.correlate(t, func(n int) []int {
		order := make([]int, n)
		for i := range order {
			order[i] = i
		}
		return order
	})
	return r.new, out
}

func (r *rebuild) node(old Node) Node {
	if n, made := r.at[old]; made {
		return n
	}
	n := r.make(&r.old.nodes[old])
	r.at[old] = n
	return n
}

func (r *rebuild) make(n *node) Node {
	switch {
	case n.op == opConstant:
		return r.new.Constant(n.value)
	case n.op == opInfluence:
		return r.influence(int(n.left))
	case n.op < opAdd:
		return r.new.append(node{op: n.op, left: r.node(n.left)})
	}
	left, right := n.left, n.right
	if r.rightFirst() {
		r.node(right)
	}
	if (n.op == opAdd || n.op == opMultiply) && r.swapped() {
		left, right = right, left
	}
	return r.new.append(node{op: n.op, left: r.node(left), right: r.node(right)})
}

// correlate brings the groups over, each in the order given. Members that
// nothing needs are made as well, since they share in the draws.
func (r *rebuild) correlate(t *testing.T, order func(n int) []int) {
	for _, g := range r.old.groups {
		nodes := make([]Node, len(g.members))
		matrix := mat.NewSymDense(len(nodes), nil)
		at := order(len(nodes))
		for i := range nodes {
			nodes[i] = r.member(g.members[at[i]])
			for j := range i + 1 {
				matrix.SetSym(i, j, g.r[at[i]][at[j]])
			}
		}
		require.NoError(t, r.new.Correlate(nodes, matrix))
	}
}

// member returns the node of an influence itself.
func (r *rebuild) member(i int) Node {
	id := r.old.influences[i].Identity()
	if n, known := r.new.known[id]; known {
		return n
	}
	r.influence(i)
	return r.new.known[id]
}

// inUnits is the distribution of a quantity in a unit so many times smaller.
func inUnits(d Distribution, by float64) Distribution {
	switch d := d.(type) {
	case Normal:
		return Normal{Mu: d.Mu * by, Sigma: d.Sigma * by}
	case Rectangular:
		return Rectangular{Low: d.Low * by, High: d.High * by}
	case distribution.Triangular:
		return distribution.Triangular{Low: d.Low * by, High: d.High * by}
	case Trapezoidal:
		return Trapezoidal{d.Low * by, d.High * by, d.Beta}
	case InexactRectangular:
		return InexactRectangular{d.Low * by, d.High * by, d.D * by}
	case Arcsine:
		return Arcsine{d.Low * by, d.High * by}
	case StudentT:
		return StudentT{Mu: d.Mu * by, Sigma: d.Sigma * by, Nu: d.Nu}
	case Gamma:
		return Gamma{Mu: d.Mu * by, Sigma: d.Sigma * by}
	}
	panic("uncertainty: a distribution that the tests do not know")
}
