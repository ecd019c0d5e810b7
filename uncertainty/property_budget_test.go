package uncertainty

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"

	"minim/uncertainty/near"
)

// TestSharesAddToOne, or are all 0 when nothing is uncertain. Each term is no
// larger than the majorant allows, and so is what rounding leaves.
func TestSharesAddToOne(t *testing.T) {
	forRandomModels(t, randomModels, func(what string, _ *rand.Rand, m *Model, out Node) {
		a := propagate(t, m, out, 0.95)
		sum, size, largest := 0.0, 0.0, math.Inf(1)
		for i := range a.Budget {
			line := &a.Budget[i]
			sum += line.Share
			size += math.Abs(line.Share)
			assert.Equal(t, line.Contribution, line.Sensitivity*line.StandardUncertainty, what)
			assert.Equal(t, true, math.Abs(line.Contribution) <= largest, "%s: the largest first", what)
			largest = math.Abs(line.Contribution)
		}
		near.Absolute(t, what, 1, sum, 1e-14*size)
	})
	m := new(Model)
	x, y := add(m, "x", Normal{Mu: 1, Sigma: 0.1}), add(m, "y", Normal{Mu: 1, Sigma: 0})
	for _, certain := range []Node{m.Divide(x, x), m.Subtract(x, x), y, m.Multiply(y, m.Constant(3))} {
		for _, share := range shares(propagate(t, m, certain, 0.95)) {
			assert.Equal(t, 0.0, share)
		}
	}
}

// TestOneMoreError: an independent influence of mean 0 that is added never makes
// the result more certain, and makes it as much less certain as its u.
func TestOneMoreError(t *testing.T) {
	forRandomModels(t, randomModels/2, func(what string, random *rand.Rand, m *Model, out Node) {
		before := propagate(t, m, out, 0.95)
		u := before.StandardUncertainty * math.Exp(20*random.Float64()-10)
		out = m.Add(out, add(m, "one more", randomDistribution(random, 0, u)))
		after := propagate(t, m, out, 0.95)
		assert.Equal(t, true, after.StandardUncertainty >= before.StandardUncertainty, what)
		near.Relative(t, what, math.Hypot(before.StandardUncertainty, u), after.StandardUncertainty, 1e-14)
		near.Absolute(t, what, before.Value, after.Value, 1e-15*math.Abs(before.Value)+1e-15*u)
	})
}

// TestJointAgreesWithEach: the diagonal holds the u² of each quantity, the
// matrix is symmetric and positive semi-definite, and its correlation
// coefficients lie between -1 and 1.
func TestJointAgreesWithEach(t *testing.T) {
	forRandomModels(t, randomModels/2, func(what string, random *rand.Rand, m *Model, out Node) {
		outs := []Node{out}
		for range random.IntN(6) {
			if n := Node(random.IntN(int(out) + 1)); m.checkDivisors(m.reachable(n)) == nil {
				outs = append(outs, n)
			}
		}
		j, err := m.PropagateJointly(outs...)
		require.NoError(t, err)
		scaled := mat.NewSymDense(len(outs), nil)
		for k, out := range outs {
			a := propagate(t, m, out, 0.95)
			assert.Equal(t, a.Value, j.Values[k], what)
			near.Relative(t, what, a.StandardUncertainty, j.StandardUncertainty(k), 1e-14)
			for l := range k + 1 {
				r := j.Correlation(k, l)
				assert.Equal(t, true, -1 <= r && r <= 1, "%s: %v", what, r)
				scaled.SetSym(k, l, r)
			}
		}
		var e mat.EigenSym
		require.Equal(t, true, e.Factorize(scaled, false))
		near.Absolute(t, what+": what is negative of the least eigenvalue", 0, min(0, e.Values(nil)[0]), 1e-14)
	})
}
