package uncertainty

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat"

	"minim/uncertainty/near"
)

// symmetric makes a matrix from its rows.
func symmetric(rows ...[]float64) *mat.SymDense {
	s := mat.NewSymDense(len(rows), nil)
	for i, row := range rows {
		for j, x := range row[:i+1] {
			s.SetSym(i, j, x)
		}
	}
	return s
}

func pair(r float64) *mat.SymDense { return symmetric([]float64{1}, []float64{r, 1}) }

// TestCorrelateErrors: what is wrong is said with the names of the influences,
// and leaves the model as it was.
func TestCorrelateErrors(t *testing.T) {
	m := new(Model)
	a, b, c := add(m, "a", Normal{Mu: 0, Sigma: 1}), add(m, "b", Normal{Mu: 0, Sigma: 1}), add(m, "c", Normal{Mu: 0, Sigma: 1})
	d, e := add(m, "d", Normal{Mu: 0, Sigma: 1}), add(m, "e", Normal{Mu: 0, Sigma: 1})
	flat, few := add(m, "flat", PlusMinus(1)), add(m, "few", StudentT{Mu: 0, Sigma: 1, Nu: 4})
	require.NoError(t, m.Correlate([]Node{d, e}, pair(0.5)))
	// Of three, no more than two can oppose each other: eigenvalues 1.9, 1.9, -0.8.
	opposed := symmetric([]float64{1}, []float64{-0.9, 1}, []float64{-0.9, -0.9, 1})
	for _, bad := range []struct {
		nodes []Node
		r     mat.Symmetric
		want  string
	}{
		{[]Node{a, flat}, pair(0.5), `"flat" cannot have a correlation coefficient: it is not normal`},
		{[]Node{few, a}, pair(0.5), `"few" cannot have a correlation coefficient: it is not normal`},
		{[]Node{a, d}, pair(0.5), `"d" is correlated twice`},
		{[]Node{a, a}, pair(1), `"a" is correlated twice`},
		{[]Node{a, b}, symmetric([]float64{1}, []float64{0, 0.9}), `the correlation coefficient of "b" with itself must be 1, found 0.9`},
		{[]Node{a, b}, symmetric([]float64{math.NaN()}, []float64{0, 1}), `the correlation coefficient of "a" with itself must be 1, found NaN`},
		{[]Node{a, b}, pair(1.01), `the correlation coefficient of "a" and "b" must lie between -1 and 1, found 1.01`},
		{[]Node{a, b}, pair(-1.01), `the correlation coefficient of "a" and "b" must lie between -1 and 1, found -1.01`},
		{[]Node{a, b}, pair(math.NaN()), `the correlation coefficient of "a" and "b" must lie between -1 and 1, found NaN`},
		{[]Node{a, b, c}, opposed, `the correlation matrix of "a", "b", "c" is not positive semi-definite (least eigenvalue -0.8): no quantities can be correlated in this way`},
	} {
		assert.Equal(t, bad.want, fmt.Sprint(m.Correlate(bad.nodes, bad.r)))
	}
	require.NoError(t, m.Correlate([]Node{c, b, a}, symmetric([]float64{1}, []float64{0, 1}, []float64{0, 0, 1})))
}

// TestCorrelatePanics: mistakes of a programmer.
func TestCorrelatePanics(t *testing.T) {
	m := new(Model)
	a, b := add(m, "a", Normal{Mu: 0, Sigma: 1}), add(m, "b", Normal{Mu: 0, Sigma: 1})
	sum := m.Add(a, b)
	panics(t, "uncertainty: 1 influences with a correlation matrix of 2 rows", func() { _ = m.Correlate([]Node{a}, pair(0)) })
	panics(t, "uncertainty: node 2 is not an influence", func() { _ = m.Correlate([]Node{a, sum}, pair(0)) })
	panics(t, "uncertainty: node 9 is not of this model", func() { _ = m.Correlate([]Node{a, 9}, pair(0)) })
}

// TestCorrelationByHand: u² = u_a² + u_b² + 2 r u_a u_b for a sum (JCGM 100,
// 5.2.2), also where r is ±1 and the matrix singular; shares follow c_i (R c)_i.
func TestCorrelationByHand(t *testing.T) {
	for _, c := range []struct{ r, sum, difference, share float64 }{
		{0, 5, 5, 9. / 25},
		{1, 7, 1, 3. / 7},
		{-1, 1, 7, -3},
		{0.5, math.Sqrt(37), math.Sqrt(13), 15. / 37},
		{-0.5, math.Sqrt(13), math.Sqrt(37), 3. / 13},
	} {
		m := new(Model)
		a, b := add(m, "a", Normal{Mu: 10, Sigma: 3}), add(m, "b", Normal{Mu: 20, Sigma: 4})
		require.NoError(t, m.Correlate([]Node{b, a}, pair(c.r)))
		what := fmt.Sprint("r = ", c.r)
		sum, difference := m.Add(a, b), m.Subtract(a, b)
		inSum := propagate(t, m, sum, 0.95)
		near.Relative(t, what+", sum", c.sum, inSum.StandardUncertainty, 1e-15)
		near.Relative(t, what+", share", c.share, line(t, inSum, "a").Share, 1e-14)
		near.Relative(t, what+", difference", c.difference, propagate(t, m, difference, 0.95).StandardUncertainty, 1e-15)
		for out, u := range map[Node]float64{sum: c.sum, difference: c.difference} {
			values := sample(t, m, out, 5, 50_000)
			near.Relative(t, what+", spread of the trials", u, stat.StdDev(values, nil), 5/math.Sqrt(2*50_000))
		}
	}
}

// TestWhatCancels: equal errors with r = 1 cancel in a difference, opposite ones
// with r = -1 in a sum; nothing is left in any trial.
func TestWhatCancels(t *testing.T) {
	for _, r := range []float64{1, -1} {
		m := new(Model)
		a, b := add(m, "a", Normal{Mu: 10, Sigma: 3}), add(m, "b", Normal{Mu: 10, Sigma: 3})
		require.NoError(t, m.Correlate([]Node{a, b}, pair(r)))
		out := m.Subtract(a, b)
		if r < 0 {
			out = m.Add(a, b)
		}
		assert.Equal(t, 0.0, propagate(t, m, out, 0.95).StandardUncertainty)
		for _, v := range sample(t, m, out, 5, 1000) {
			near.Absolute(t, "what is left", m.Expected(out), v, 1e-14)
		}
	}
}

// TestSimulatedCovariance compares the trials of correlated influences with
// their means, standard uncertainties and correlation matrix, also where that is
// singular: within five standard errors, (1 - r²)/√n for a coefficient.
func TestSimulatedCovariance(t *testing.T) {
	skipUnderRace(t)
	const n = 20_000
	for i := range 40 {
		random := rand.New(rand.NewPCG(uint64(i), 6))
		size := 2 + random.IntN(4)
		r := randomCorrelation(random, size, 1+random.IntN(size))
		m := new(Model)
		var nodes []Node
		for k := range size {
			nodes = append(nodes, add(m, fmt.Sprint(k), Normal{Mu: float64(k), Sigma: math.Pow(10, float64(k-2))}))
		}
		require.NoError(t, m.Correlate(nodes, r))
		drawn := make([][]float64, size)
		for k, node := range nodes {
			drawn[k] = sample(t, m, node, uint64(i), n)
			mean, u := stat.MeanStdDev(drawn[k], nil)
			want := math.Pow(10, float64(k-2))
			near.Absolute(t, "mean", float64(k), mean, 5*want/math.Sqrt(n))
			near.Relative(t, "u", want, u, 5/math.Sqrt(2*n))
			for l := range k {
				c := r.At(k, l)
				near.Absolute(t, "coefficient", c, stat.Correlation(drawn[k], drawn[l], nil), 5*(1-c*c)/math.Sqrt(n)+1e-12)
			}
		}
	}
}

// TestSmallFaultsOfAMatrix: coefficients that were rounded may make it a little
// less than positive semi-definite, and its diagonal a little off 1.
func TestSmallFaultsOfAMatrix(t *testing.T) {
	m := new(Model)
	a, b, c := add(m, "a", Normal{Mu: 0, Sigma: 1}), add(m, "b", Normal{Mu: 0, Sigma: 1}), add(m, "c", Normal{Mu: 0, Sigma: 1})
	rounded := symmetric([]float64{1 + 1e-12}, []float64{0.6, 1}, []float64{0.8, 0.9600000001, 1})
	require.NoError(t, m.Correlate([]Node{a, b, c}, rounded))
	near.Relative(t, "u", math.Sqrt(3+2*(0.6+0.8+0.96)), propagate(t, m, m.Add(a, b, c), 0.95).StandardUncertainty, 1e-9)
}

// TestCorrelatedDegreesOfFreedom: a group counts as one contribution with the
// least of its degrees of freedom: u⁴/(25²/4 + 12⁴/8) with u² = 25 + 144.
func TestCorrelatedDegreesOfFreedom(t *testing.T) {
	m := new(Model)
	a, b := known(m, "a", Normal{Mu: 0, Sigma: 3}, 9), known(m, "b", Normal{Mu: 0, Sigma: 4}, 4)
	require.NoError(t, m.Correlate([]Node{a, b}, pair(0)))
	out := m.Add(a, b, known(m, "c", Normal{Mu: 0, Sigma: 12}, 8))
	near.Relative(t, "ν", 169*169/(625./4+20736./8), propagate(t, m, out, 0.95).DegreesOfFreedom, 1e-14)
}

// TestCauseWithCorrelation: the linear part of the model is drawn with its
// coefficients. Errors of 10 that cancel leave a lopsided gamma distribution,
// and a model that is linear has no curvature.
func TestCauseWithCorrelation(t *testing.T) {
	m := new(Model)
	a, b := add(m, "a", Normal{Mu: 10, Sigma: 10}), add(m, "b", Normal{Mu: 10, Sigma: 10})
	require.NoError(t, m.Correlate([]Node{a, b}, pair(1)))
	_, _, c := check(t, m, m.Add(add(m, "g", Gamma{Mu: 10, Sigma: 5}), m.Subtract(a, b)))
	assert.Equal(t, skewed, c.Cause)
	assert.Equal(t, "g", codeOf(c.Influence))
}
