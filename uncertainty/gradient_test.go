package uncertainty

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"minim/uncertainty/near"
)

// TestGradientAgainstDifferences compares the exact derivatives of random
// models with central differences of fourth order, in steps of the standard
// uncertainty of each influence.
func TestGradientAgainstDifferences(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	for i := range 300 {
		m, out := randomModel(random)
		v := m.values(out, meanOf)
		exact := m.gradient(out, v)
		for j := range m.influences {
			u := m.influences[j].Distribution.StandardUncertainty()
			what := fmt.Sprintf("model %d, influence %d", i, j)
			near.Equal(t, what, m.difference(out, j, u), exact[j]*u, 1e-10*math.Abs(v[out]), 1e-6)
		}
	}
}

func meanOf(in *Influence) float64 { return in.Distribution.Mean() }

// difference is u ∂f/∂x by the five-point formula with the step u.
func (m *Model) difference(out Node, influence int, u float64) float64 {
	f := func(steps float64) float64 {
		return m.values(out, func(in *Influence) float64 {
			if in == &m.influences[influence] {
				return meanOf(in) + steps*u
			}
			return meanOf(in)
		})[out]
	}
	return (8*(f(1)-f(-1)) - (f(2) - f(-2))) / 12
}

// randomModel makes a model of 3 to 30 influences of very different sizes, and
// combines them, with much sharing, until each has been used.
func randomModel(random *rand.Rand) (*Model, Node) {
	m := new(Model)
	pool := []Node{m.Constant(2)}
	for i := range 3 + random.IntN(28) {
		scale := math.Pow(10, float64(random.IntN(13)-6))
		x := add(m, fmt.Sprint(i), Normal{scale * (1 + random.Float64()), scale * 1e-3})
		pool = append(pool, m.Divide(x, m.Constant(scale)))
	}
	out := pool[0]
	for _, n := range pool[1:] {
		out = m.combineTame(random, out, n)
		out = m.combineTame(random, out, pool[random.IntN(len(pool))])
		pool = append(pool, out)
	}
	return m, out
}

// combineTame joins two nodes by a random operation whose value stays between
// 0.1 and 100 in size, or else by a quotient of a sum.
func (m *Model) combineTame(random *rand.Rand, a, b Node) Node {
	for range 8 {
		n := []func(a, b Node) Node{m.Add, m.Subtract, m.Multiply, m.Divide}[random.IntN(4)](a, b)
		if size := math.Abs(m.Expected(n)); 0.1 < size && size < 100 {
			return n
		}
	}
	return m.Add(m.Divide(a, m.Constant(100)), b)
}

// TestGradientByHand: constructed, closed form, at x = 3, y = 4 of u = 1e-3.
func TestGradientByHand(t *testing.T) {
	for _, c := range []struct {
		name   string
		f      func(m *Model, x, y Node) Node
		dx, dy float64
	}{
		{"x + y", func(m *Model, x, y Node) Node { return m.Add(x, y) }, 1, 1},
		{"x - y", func(m *Model, x, y Node) Node { return m.Subtract(x, y) }, 1, -1},
		{"y - x", func(m *Model, x, y Node) Node { return m.Subtract(y, x) }, -1, 1},
		{"x y", func(m *Model, x, y Node) Node { return m.Multiply(x, y) }, 4, 3},
		{"x / y", func(m *Model, x, y Node) Node { return m.Divide(x, y) }, 0.25, -3.0 / 16},
		{"x x", func(m *Model, x, y Node) Node { return m.Multiply(x, x) }, 6, 0},
		{"x / x", func(m *Model, x, y Node) Node { return m.Divide(x, x) }, 0, 0},
		{"x - x", func(m *Model, x, y Node) Node { return m.Subtract(x, x) }, 0, 0},
		{"x + x + y", func(m *Model, x, y Node) Node { return m.Sum(x, x, y) }, 2, 1},
		{"x/(x + y)", func(m *Model, x, y Node) Node { return m.Divide(x, m.Add(x, y)) }, 4.0 / 49, -3.0 / 49},
		{"x itself", func(m *Model, x, y Node) Node { return x }, 1, 0},
	} {
		m := new(Model)
		out := c.f(m, add(m, "x", Normal{3, 1e-3}), add(m, "y", Normal{4, 1e-3}))
		g := m.gradient(out, m.values(out, meanOf))
		near.Absolute(t, c.name+", by x", c.dx, g[0], 1e-16)
		near.Absolute(t, c.name+", by y", c.dy, g[1], 1e-16)
	}
}
