package uncertainty

import (
	"math"
	"testing"

	"minim/uncertainty/near"
)

// TestGradientByHand: constructed, closed form, at x = 3, y = 4 of u = 1e-3. The
// derivatives of random models are compared with differences elsewhere.
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
		{"x + x + y", func(m *Model, x, y Node) Node { return m.Add(x, x, y) }, 2, 1},
		{"x/(x + y)", func(m *Model, x, y Node) Node { return m.Divide(x, m.Add(x, y)) }, 4.0 / 49, -3.0 / 49},
		{"sin x", func(m *Model, x, y Node) Node { return m.Sine(x) }, math.Cos(3), 0},
		{"x cos y", func(m *Model, x, y Node) Node { return m.Multiply(x, m.Cosine(y)) }, math.Cos(4), -3 * math.Sin(4)},
		{"cos(x - y)", func(m *Model, x, y Node) Node { return m.Cosine(m.Subtract(x, y)) }, math.Sin(1), -math.Sin(1)},
		{"x itself", func(m *Model, x, y Node) Node { return x }, 1, 0},
	} {
		m := new(Model)
		out := c.f(m, add(m, "x", Normal{Mu: 3, Sigma: 1e-3}), add(m, "y", Normal{Mu: 4, Sigma: 1e-3}))
		g := m.gradient(out, m.values(out, mean))
		near.Absolute(t, c.name+", by x", c.dx, g[0], 1e-15)
		near.Absolute(t, c.name+", by y", c.dy, g[1], 1e-15)
	}
}
