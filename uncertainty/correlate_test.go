package uncertainty

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"gonum.org/v1/gonum/mat"
)

// What follows states what published cases need of a model and no route of minim does.

// Sine returns the node sin a, a in radians.
func (m *Model) Sine(a Node) Node { return m.append(node{op: opSine, left: a}) }

// Cosine returns the node cos a, a in radians.
func (m *Model) Cosine(a Node) Node { return m.append(node{op: opCosine, left: a}) }

// Correlate states the correlation coefficients r of some influences (JCGM 100,
// 5.2.2): row and column i of r belong to nodes[i]. It is for estimates that
// were obtained together, such as means of readings taken in sets; what is
// shared by several uses needs no coefficient, since asking for an influence
// again gives the same node.
//
// The influences must be normal, and then form a multivariate normal
// distribution (JCGM 101, 6.4.8). An error says which coefficient is wrong, or
// that the matrix is not positive semi-definite. It panics when a node is not
// an influence, or the numbers of nodes and rows differ.
func (m *Model) Correlate(nodes []Node, r mat.Symmetric) error {
	if r.SymmetricDim() != len(nodes) {
		panic(fmt.Sprintf("uncertainty: %d influences with a correlation matrix of %d rows", len(nodes), r.SymmetricDim()))
	}
	g := correlated{r: rows(r)}
	for _, n := range nodes {
		m.mustHold(n)
		if m.nodes[n].op != opInfluence {
			panic(fmt.Sprintf("uncertainty: node %d is not an influence", n))
		}
		i := int(m.nodes[n].left)
		if err := m.mayCorrelate(i, g.members); err != nil {
			return err
		}
		g.members = append(g.members, i)
	}
	if err := m.checkCoefficients(g); err != nil {
		return err
	}
	root, least := squareRoot(r)
	if least < -1e-9 {
		return fmt.Errorf("the correlation matrix of %s is not positive semi-definite (least eigenvalue %.2g): no quantities can be correlated in this way", m.list(g.members), least)
	}
	g.root = rows(root)
	for _, i := range g.members {
		if nu := m.influences[i].DegreesOfFreedom; nu > 0 && (g.nu == 0 || nu < g.nu) {
			g.nu = nu
		}
	}
	m.groups = append(m.groups, g)
	return nil
}

// mayCorrelate reports why an influence cannot join a group.
func (m *Model) mayCorrelate(i int, members []int) error {
	in := &m.influences[i]
	if _, normal := in.Distribution.(Normal); !normal {
		return fmt.Errorf("%q cannot have a correlation coefficient: it is not normal", in.Code)
	}
	if m.isCorrelated(i) || slices.Contains(members, i) {
		return fmt.Errorf("%q is correlated twice", in.Code)
	}
	return nil
}

func (m *Model) checkCoefficients(g correlated) error {
	for i, a := range g.members {
		if own := g.r[i][i]; !(math.Abs(own-1) <= 1e-9) {
			return fmt.Errorf("the correlation coefficient of %q with itself must be 1, found %v", m.influences[a].Code, own)
		}
		for j, b := range g.members[:i] {
			if r := g.r[i][j]; !(math.Abs(r) <= 1) {
				return fmt.Errorf("the correlation coefficient of %q and %q must lie between -1 and 1, found %v", m.influences[b].Code, m.influences[a].Code, r)
			}
		}
	}
	return nil
}

func (m *Model) list(influences []int) string {
	names := make([]string, len(influences))
	for i, k := range influences {
		names[i] = fmt.Sprintf("%q", m.influences[k].Code)
	}
	return strings.Join(names, ", ")
}

// squareRoot returns the symmetric square root of a matrix and its least
// eigenvalue. Negative eigenvalues, and positive ones that are no more than the
// rounding of the others, are taken as 0.
func squareRoot(r mat.Symmetric) (root *mat.SymDense, least float64) {
	var e mat.EigenSym
	if !e.Factorize(r, true) {
		return nil, math.Inf(-1)
	}
	values := e.Values(nil)
	n := len(values)
	var q mat.Dense
	e.VectorsTo(&q)
	scaled := mat.NewDense(n, n, nil)
	rounding := float64(n) * 0x1p-52 * values[n-1]
	scaled.Apply(func(_, j int, x float64) float64 {
		if values[j] <= rounding {
			return 0
		}
		return x * math.Sqrt(values[j])
	}, &q)
	var full mat.Dense
	full.Mul(scaled, q.T())
	root = mat.NewSymDense(n, nil)
	for i := range n {
		for j := i; j < n; j++ {
			root.SetSym(i, j, full.At(i, j))
		}
	}
	return root, values[0]
}

func rows(r mat.Symmetric) [][]float64 {
	list := make([][]float64, r.SymmetricDim())
	for i := range list {
		for j := range list {
			list[i] = append(list[i], r.At(i, j))
		}
	}
	return list
}

func sineAt(x float64) float64 {
	f, _ := opSine.unary(x)
	return f
}
