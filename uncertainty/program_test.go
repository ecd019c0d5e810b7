package uncertainty

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty/near"
	"minim/uncertainty/random"
)

// byNode evaluates a block of trials node by node, with every value kept: what a
// program must give bit for bit, however it uses its slots.
type byNode struct {
	m     *Model
	seed  uint64
	block int
	drawn map[int][]float64 // by influence
}

func (e *byNode) values(out Node) []float64 {
	v := make([][]float64, out+1)
	for i, needed := range e.m.reachable(out) {
		if needed {
			v[i] = e.node(&e.m.nodes[i], v)
		}
	}
	return v[out]
}

func (e *byNode) node(n *node, v [][]float64) []float64 {
	dst := make([]float64, random.BlockSize)
	for i := range dst {
		switch {
		case n.op == opConstant:
			dst[i] = n.value
		case n.op == opInfluence:
			dst[i] = e.draws(int(n.left))[i]
		case n.op < opAdd:
			dst[i] = n.of(v[n.left][i], 0)
		default:
			dst[i] = n.of(v[n.left][i], v[n.right][i])
		}
	}
	return dst
}

// draws of an influence: its own, or the mean and a mixture of the unit normals
// of its group.
func (e *byNode) draws(influence int) []float64 {
	if x, ok := e.drawn[influence]; ok {
		return x
	}
	in := &e.m.influences[influence]
	x := e.stream(influence, in.Distribution)
	if g, row := e.m.groupOf(influence); g >= 0 {
		fill(x, in.Distribution.Summary().Mean)
		for j, member := range e.m.groups[g].members {
			weight := in.Distribution.Summary().StandardUncertainty * e.m.groups[g].root[row][j]
			for i, z := range e.stream(member, Normal{Mu: 0, Sigma: 1}) {
				x[i] += float64(weight * z)
			}
		}
	}
	e.drawn[influence] = x
	return x
}

func (e *byNode) stream(influence int, d Distribution) []float64 {
	s := new(random.Source)
	s.Key(e.seed, e.m.keys[influence], e.block)
	x := make([]float64, random.BlockSize)
	d.Fill(x, s)
	return x
}

// TestProgram compares compiled programs with an evaluation node by node, also
// for nodes in the middle of the model and for the part that is linear.
func TestProgram(t *testing.T) {
	most := 0
	forRandomModels(t, randomModels/10, func(what string, random *rand.Rand, m *Model, out Node) {
		for _, out := range []Node{out, Node(random.IntN(int(out) + 1))} {
			slopes := make([]float64, len(m.influences))
			for i := range slopes {
				slopes[i] = float64(random.IntN(3)) // some of them 0
			}
			p := m.compile(out, slopes)
			most = max(most, len(p.steps)-p.slots)
			w := p.newWorker(7)
			for _, block := range []int{0, 3, 0} {
				e := &byNode{m, 7, block, make(map[int][]float64)}
				values, linear := w.run(block)
				require.Equal(t, e.values(out), values, what)
				sum, size := e.linear(out, slopes)
				for k := range sum { // in another order
					near.Absolute(t, what, sum[k], linear[k], 1e-14*size[k])
				}
			}
		}
	})
	assert.Equal(t, true, most > 50, "slots are used again")
}

// linear adds up Σ slope (x - mean) in the order of the nodes, and the sizes of
// its terms.
func (e *byNode) linear(out Node, slopes []float64) (sum, size []float64) {
	sum, size = make([]float64, random.BlockSize), make([]float64, random.BlockSize)
	for n, needed := range e.m.reachable(out) {
		if i := int(e.m.nodes[n].left); needed && e.m.nodes[n].op == opInfluence {
			for k, x := range e.draws(i) {
				term := float64(slopes[i] * (x - e.m.influences[i].Distribution.Summary().Mean))
				sum[k] += term
				size[k] += math.Abs(term)
			}
		}
	}
	return sum, size
}

// TestProgramOfConstants: constants are folded, also where all is constant, and
// on either side of each operation.
func TestProgramOfConstants(t *testing.T) {
	m := new(Model)
	two, x := m.Constant(2), add(m, "x", Rectangular{Low: 1, High: 3})
	six := m.Multiply(two, m.Constant(3))
	for i, out := range []Node{
		two, six, m.Sine(six), m.Cosine(m.Subtract(six, two)), m.Divide(six, two), x, m.Sine(x), m.Add(x, x), m.Subtract(x, x),
		m.Add(x, two), m.Add(two, x), m.Subtract(x, two), m.Subtract(two, x),
		m.Multiply(x, two), m.Multiply(two, x), m.Divide(x, two), m.Divide(two, x),
	} {
		p := m.compile(out, make([]float64, 1))
		e := &byNode{m, 1, 2, make(map[int][]float64)}
		values, _ := p.newWorker(1).run(2)
		assert.Equal(t, e.values(out), values, fmt.Sprint("output ", i))
		assert.Equal(t, i >= 5, len(p.steps) > 0, "steps for output %d", i)
	}
}
