package uncertainty

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestZeroDivisor(t *testing.T) {
	for _, c := range []struct {
		name    string
		divisor Distribution
		message string // "" when the division is sound
	}{
		// JCGM 101 worked check: N(0,1)/N(0,1) is a Cauchy distribution.
		{"standard normal", Normal{0, 1}, "division by x, which may be anything from -4 to 4 and so may be zero"},
		{"0.2 below 4 u", Normal{1, 0.2}, ""},
		{"exactly 4 u", Normal{1, 0.25}, "division by x, which may be anything from 0 to 2 and so may be zero"},
		{"exactly -4 u", Normal{-1, 0.25}, "division by x, which may be anything from -2 to 0 and so may be zero"},
		{"negative", Normal{-1, 0.2}, ""},
		{"t", StudentT{1, 0.3, 5}, "division by x, which may be anything from -0.2 to 2.2 and so may be zero"},
		{"touches zero", Rectangular{0, 1}, "division by x, which may be anything from 0 to 1 and so may be zero"},
		{"touches from below", Rectangular{-1, 0}, "division by x, which may be anything from -1 to 0 and so may be zero"},
		{"just above", Rectangular{1e-300, 1}, ""},
		{"negative rectangle", Rectangular{-2, -1}, ""},
		{"triangle", Triangular{-1, 3}, "division by x, which may be anything from -1 to 3 and so may be zero"},
		{"gamma", Gamma{1, 0.1}, "division by x, which may be anything from 0 to 1.4 and so may be zero"},
	} {
		m := new(Model)
		out := m.Divide(m.Constant(1), add(m, "x", c.divisor))
		_, err := m.Propagate(out, 0.95)
		if c.message == "" {
			require.NoError(t, err, c.name)
			continue
		}
		require.Equal(t, c.message, fmt.Sprint(err), c.name)
	}
}

// TestZeroDivisorOfNodes: the range goes through every operation, and the
// message takes the name of the node.
func TestZeroDivisorOfNodes(t *testing.T) {
	m := new(Model)
	x, y := add(m, "x", Rectangular{1, 2}), add(m, "y", Rectangular{-4, -1})
	refused := func(low, high float64) error { return &ZeroDivisorError{"the divisor", low, high} }
	for _, c := range []struct {
		divisor Node
		want    error
	}{
		{m.Add(x, y), refused(-3, 1)},
		{m.Subtract(x, m.Constant(1.5)), refused(-0.5, 0.5)},
		{m.Subtract(x, y), nil},
		{m.Multiply(x, y), nil},
		{m.Multiply(y, m.Add(x, y)), refused(-4, 12)},
		{m.Divide(x, y), nil},
		{m.Add(m.Divide(x, y), m.Constant(1)), refused(-1, 0.75)},
		{m.Constant(0), refused(0, 0)},
	} {
		_, err := m.Propagate(m.Divide(m.Constant(1), m.Name(c.divisor, "the divisor")), 0.95)
		assert.Equal(t, c.want, err)
	}
	_, err := m.Propagate(m.Divide(x, m.Subtract(x, x)), 0.95)
	assert.Equal(t, &ZeroDivisorError{"an unnamed quantity", -1, 1}, err)
}
