package uncertainty

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"

	"minim/uncertainty/near"
)

// TestQuadraticFormOfNormals: for y = g·d + d·Q d with d normal of covariance Σ
// the terms of second order are all there is: the mean shifts by tr QΣ, and the
// variance g·Σg grows by 2 tr (QΣ)² (closed form; e.g. Mathai and Provost,
// Quadratic Forms in Random Variables, 1992, from memory).
func TestQuadraticFormOfNormals(t *testing.T) {
	for i := range 300 {
		random := rand.New(rand.NewPCG(uint64(i), 4))
		n := 1 + random.IntN(6)
		m := new(Model)
		r := randomCorrelation(random, n, 1+random.IntN(n))
		sigma := mat.NewSymDense(n, nil)
		var d []Node
		for j := range n {
			u := math.Pow(10, 4*random.Float64()-2)
			sigma.SetSym(j, j, u)
			d = append(d, add(m, fmt.Sprint(j), Normal{Mu: 0, Sigma: u}))
		}
		sigma.CopySym(scaledBy(sigma, r))
		require.NoError(t, m.Correlate(d, r))

		out, g, q := quadraticForm(m, random, d, sigma)
		var product, squared mat.Dense
		product.Mul(q, sigma)
		squared.Mul(&product, &product)
		first, second := mat.Inner(g, sigma, g), 2*mat.Trace(&squared)
		s, err := m.PropagateSecondOrder(out)
		require.NoError(t, err)
		what := fmt.Sprint("form ", i)
		size := first + 2*mat.Norm(&product, 2)*mat.Norm(&product, 2)
		near.Absolute(t, what+", shift", mat.Trace(&product), s.Shift, 1e-13*math.Sqrt(size))
		near.Absolute(t, what+", variance", second, s.Variance, 1e-13*size)
		near.Relative(t, what+", u", math.Sqrt(first+second), s.StandardUncertainty, 1e-12)
	}
}

// scaledBy is the covariance matrix for standard uncertainties on a diagonal and
// a correlation matrix.
func scaledBy(u, r *mat.SymDense) *mat.SymDense {
	covariance := mat.NewSymDense(r.SymmetricDim(), nil)
	for i := range r.SymmetricDim() {
		for j := range i + 1 {
			covariance.SetSym(i, j, u.At(i, i)*r.At(i, j)*u.At(j, j))
		}
	}
	return covariance
}

// quadraticForm has terms of like size.
func quadraticForm(m *Model, random *rand.Rand, d []Node, sigma *mat.SymDense) (Node, *mat.VecDense, *mat.SymDense) {
	g, q := mat.NewVecDense(len(d), nil), mat.NewSymDense(len(d), nil)
	out := m.Constant(0)
	for i, a := range d {
		g.SetVec(i, random.NormFloat64()/math.Sqrt(sigma.At(i, i)))
		out = m.Add(out, m.Multiply(m.Constant(g.AtVec(i)), a))
		for j, b := range d[:i+1] {
			q.SetSym(i, j, random.NormFloat64()/math.Sqrt(sigma.At(i, i)*sigma.At(j, j)))
			weight := q.At(i, j)
			if i != j {
				weight *= 2 // it stands in the matrix twice
			}
			out = m.Add(out, m.Multiply(m.Multiply(m.Constant(weight), a), b))
		}
	}
	return out, g, q
}

// TestSecondOrderOfAnyDistribution: likewise for squares of single influences of
// any distribution and products of two, whose variances are exact. A Student t
// counts as normal in the second order, and is left out.
func TestSecondOrderOfAnyDistribution(t *testing.T) {
	for i := range 300 {
		c := &composer{new(Model), rand.New(rand.NewPCG(uint64(i), 5)), 0.5}
		q := moments{node: c.Constant(0)}
		for range 1 + c.random.IntN(5) {
			a := moments{node: c.Constant(2)}
			a.mean = 2
			q = c.plus(q, c.square(a, moments{node: c.Constant(3), mean: 3}), 1)
			q = c.plus(q, c.times(c.influence(), c.influence()), -1)
		}
		if c.holdsStudent() {
			continue
		}
		s, err := c.PropagateSecondOrder(q.node)
		require.NoError(t, err)
		what := fmt.Sprint("model ", i)
		near.Relative(t, what+", u", math.Sqrt(q.variance), s.StandardUncertainty, 1e-12)
		near.Relative(t, what+", mean", q.mean, c.Expected(q.node)+s.Shift, 1e-13)
	}
}

func (c *composer) holdsStudent() bool {
	for i := range c.influences {
		if _, student := c.influences[i].Distribution.(StudentT); student {
			return true
		}
	}
	return false
}
