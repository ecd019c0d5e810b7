package uncertainty

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"

	"minim/uncertainty/distribution"
)

// sketch is a random model in the making.
type sketch struct {
	*Model
	random *rand.Rand
	pool   []Node       // what operands are chosen from
	degree map[Node]int // how many factors a node has, roughly
}

// mostFactors keeps a power of a shared quantity from growing out of hand.
const mostFactors = 12

// randomModel makes a model of 3 to 30 influences of all distributions and of
// sizes from 1e-12 to 1e12, some of them correlated, and combines them, with
// much sharing, until each has been used. At the means no sum is much smaller
// than its terms, so that the rounding of values stays small.
func randomModel(t testing.TB, random *rand.Rand) (*Model, Node) {
	s := &sketch{Model: new(Model), random: random, degree: make(map[Node]int)}
	for i := range 3 + random.IntN(28) {
		s.pool = append(s.pool, s.influence(fmt.Sprint(i)))
	}
	s.correlateSome(t)
	out := s.pool[0]
	for _, x := range s.pool[1:] {
		out = s.join(out, x)
		if random.IntN(2) == 0 {
			out = s.join(out, s.pool[random.IntN(len(s.pool))])
		}
		switch random.IntN(12) {
		case 0:
			out = s.turn(out)
		case 1:
			out = s.twice(out)
		}
		s.pool = append(s.pool, out)
	}
	return s.Model, out
}

// influence adds one with u between 1e-5 and 3e-2 of its size; one in four is an
// error, whose mean is 0.
func (s *sketch) influence(name string) Node {
	size := math.Pow(10, 24*s.random.Float64()-12)
	u := size * math.Pow(10, -5+3.5*s.random.Float64())
	mean := size * (1 + s.random.Float64())
	switch s.random.IntN(4) {
	case 0:
		mean = 0
	case 1:
		mean = -mean
	}
	d := randomDistribution(s.random, mean, u)
	n := s.Influence(Influence{Code: Code(name), Distribution: d, Nominal: mean})
	if mean == 0 {
		// 1 + e, or 1 - e, with e small
		n = s.Add(s.Constant(1), s.Multiply(n, s.Constant(0.01/size)))
	}
	s.degree[n] = 1
	return n
}

// randomDistribution has the mean and the standard uncertainty given.
func randomDistribution(random *rand.Rand, mean, u float64) Distribution {
	part := random.Float64()
	within := func(half float64) (low, high float64) { return mean - half, mean + half }
	switch random.IntN(11) {
	case 0:
		low, high := within(u * math.Sqrt(3))
		return Rectangular{Low: low, High: high}
	case 1:
		low, high := within(u * math.Sqrt(6))
		return distribution.Triangular{Low: low, High: high}
	case 2:
		low, high := within(u * math.Sqrt(6/(1+part*part)))
		return Trapezoidal{low, high, part}
	case 3:
		part *= 0.999 // D is half of the width at most, rounded
		half := u / math.Sqrt(1./3+part*part/9)
		low, high := within(half)
		return InexactRectangular{low, high, part * half}
	case 4:
		low, high := within(u * math.Sqrt2)
		return Arcsine{low, high}
	case 5:
		return StudentT{Mu: mean, Sigma: u, Nu: 3 + 20*part}
	case 6:
		if mean > 0 {
			return Gamma{Mu: mean, Sigma: u}
		}
	}
	return Normal{Mu: mean, Sigma: u}
}

// correlateSome correlates up to five of the normal influences, in one model of
// three with a matrix that is singular.
func (s *sketch) correlateSome(t testing.TB) {
	var members []Node
	for i := range s.nodes {
		if n := &s.nodes[i]; n.op == opInfluence && len(members) < 5 {
			if _, normal := s.influences[n.left].Distribution.(Normal); normal {
				members = append(members, Node(i))
			}
		}
	}
	if len(members) > 1 && s.random.IntN(3) == 0 {
		rank := len(members) - s.random.IntN(3)/2
		require.NoError(t, s.Correlate(members, randomCorrelation(s.random, len(members), rank)))
	}
}

// randomCorrelation is the correlation matrix of n sums of so many unit normals.
func randomCorrelation(random *rand.Rand, n, rank int) *mat.SymDense {
	factor := mat.NewDense(n, rank, nil)
	for i := range n {
		row := factor.RawRowView(i)
		length := 0.0
		for j := range row {
			row[j] = random.NormFloat64()
			length = math.Hypot(length, row[j])
		}
		for j := range row {
			row[j] /= length
		}
	}
	r := mat.NewSymDense(n, nil)
	r.SymOuterK(1, factor)
	for i := range n {
		r.SetSym(i, i, 1)
		for j := range i {
			r.SetSym(i, j, max(-1, min(r.At(i, j), 1)))
		}
	}
	return r
}

// join combines two nodes by a random operation.
func (s *sketch) join(a, b Node) Node {
	if s.degree[a]+s.degree[b] > mostFactors || s.random.IntN(2) == 0 {
		return s.sum(a, b)
	}
	product := s.Multiply(a, b)
	if quotient := s.Divide(a, b); s.random.IntN(2) == 0 && s.checkDivisors(s.reachable(quotient)) == nil {
		product = quotient
	}
	s.degree[product] = s.degree[a] + s.degree[b]
	return s.bring(product, 1e-12, 1e12)
}

// sum adds or subtracts, with b brought to the size of a, so that nothing
// cancels: the terms are of one sign, or one is twice the other at least.
func (s *sketch) sum(a, b Node) Node {
	size := math.Abs(s.Expected(a))
	b = s.bring(b, size/4, size/2)
	n := s.Add(a, b)
	if s.random.IntN(2) == 0 {
		n = s.Subtract(a, b)
	}
	s.degree[n] = max(s.degree[a], s.degree[b])
	return n
}

// turn takes the sine or the cosine of an angle between 0.3 and 1.2, which may
// be used elsewhere as well.
func (s *sketch) turn(a Node) Node {
	angle := s.bring(a, 0.3, 1.2)
	n := s.Sine(angle)
	if s.random.IntN(2) == 0 {
		n = s.Cosine(angle)
	}
	s.degree[n] = s.degree[a] + 1
	s.pool = append(s.pool, angle)
	return n
}

// twice uses a node as both operands of one operation.
func (s *sketch) twice(a Node) Node {
	n := s.Add(a, a)
	s.degree[n] = s.degree[a]
	if 2*s.degree[a] <= mostFactors && s.random.IntN(2) == 0 {
		n = s.Multiply(a, a)
		s.degree[n] = 2 * s.degree[a]
	}
	return s.bring(n, 1e-12, 1e12)
}

// bring multiplies by a constant where the size of a node is out of a range.
func (s *sketch) bring(n Node, low, high float64) Node {
	size := math.Abs(s.Expected(n))
	if low <= size && size <= high {
		return n
	}
	scaled := s.Multiply(s.Constant(math.Sqrt(low)*math.Sqrt(high)/size), n)
	s.degree[scaled] = s.degree[n]
	return scaled
}
