package uncertainty

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty/distribution"
	"minim/uncertainty/near"
)

func TestZeroDivisor(t *testing.T) {
	for _, c := range []struct {
		name    string
		divisor Distribution
		message string // "" when the division is sound
	}{
		// JCGM 101 worked check: N(0,1)/N(0,1) is a Cauchy distribution.
		{"standard normal", Normal{Mu: 0, Sigma: 1}, "division by x, which may be anything from -4 to 4 and so may be zero"},
		{"0.2 below 4 u", Normal{Mu: 1, Sigma: 0.2}, ""},
		{"exactly 4 u", Normal{Mu: 1, Sigma: 0.25}, "division by x, which may be anything from 0 to 2 and so may be zero"},
		{"exactly -4 u", Normal{Mu: -1, Sigma: 0.25}, "division by x, which may be anything from -2 to 0 and so may be zero"},
		{"negative", Normal{Mu: -1, Sigma: 0.2}, ""},
		{"t", StudentT{Mu: 1, Sigma: 0.3, Nu: 5}, "division by x, which may be anything from -0.2 to 2.2 and so may be zero"},
		{"touches zero", Rectangular{Low: 0, High: 1}, "division by x, which may be anything from 0 to 1 and so may be zero"},
		{"touches from below", Rectangular{Low: -1, High: 0}, "division by x, which may be anything from -1 to 0 and so may be zero"},
		{"just above", Rectangular{Low: 1e-300, High: 1}, ""},
		{"negative rectangle", Rectangular{Low: -2, High: -1}, ""},
		{"triangle", distribution.Triangular{Low: -1, High: 3}, "division by x, which may be anything from -1 to 3 and so may be zero"},
		{"gamma", Gamma{Mu: 1, Sigma: 0.1}, "division by x, which may be anything from 0 to 1.4 and so may be zero"},
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
	x, y := add(m, "x", Rectangular{Low: 1, High: 2}), add(m, "y", Rectangular{Low: -4, High: -1})
	refused := func(low, high float64) error {
		return &ZeroDivisorError{&Influence{Code: "the divisor", Group: Group{Name: "it"}}, low, high}
	}
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
		_, err := m.Propagate(m.Divide(m.Constant(1), m.Name(c.divisor, Influence{Code: "the divisor", Group: Group{Name: "it"}})), 0.95)
		assert.Equal(t, c.want, err)
	}
	_, err := m.Propagate(m.Divide(x, m.Subtract(x, x)), 0.95)
	assert.Equal(t, &ZeroDivisorError{new(Influence), -1, 1}, err)
}

// TestRangeOfSine compares the range over random intervals of angles, up to some
// turns wide and at crests and troughs, with the values at many angles: it holds
// them all, and is no wider than they come.
func TestRangeOfSine(t *testing.T) {
	random := rand.New(rand.NewPCG(8, 9))
	for i := range 500 {
		low := 40*random.Float64() - 20
		switch i % 3 {
		case 0:
			low = math.Pi / 2 * float64(random.IntN(20)-10)
		case 1:
			low = math.Pi/2*float64(random.IntN(20)-10) + 0.01*random.NormFloat64()
		}
		angles := interval{low, low + 8*random.Float64()*random.Float64()}
		sine, least, most := sineOf(angles), 1.0, -1.0
		for k := range 2001 {
			v := sineAt(min(angles.low+(angles.high-angles.low)*float64(k)/2000, angles.high))
			least, most = min(least, v), max(most, v)
		}
		what := fmt.Sprintf("sine from %v to %v", angles.low, angles.high)
		assert.Equal(t, true, sine.low <= least && most <= sine.high, what)
		// At a crest the sine is flat: a 1/2000 of 8 misses it by less than 1e-5.
		near.Absolute(t, what+", least", least, sine.low, 1e-5)
		near.Absolute(t, what+", greatest", most, sine.high, 1e-5)
	}
}

// TestZeroDivisorOfSine: what is divided by is a sine or a cosine.
func TestZeroDivisorOfSine(t *testing.T) {
	m := new(Model)
	narrow, across := add(m, "narrow", Rectangular{Low: 0.5, High: 2}), add(m, "across", Rectangular{Low: 2, High: 4})
	for _, c := range []struct {
		divisor Node
		want    error
	}{
		{m.Sine(narrow), nil},
		{m.Cosine(narrow), &ZeroDivisorError{new(Influence), sineAt(2 + math.Pi/2), sineAt(0.5 + math.Pi/2)}},
		{m.Sine(across), &ZeroDivisorError{new(Influence), sineAt(4), sineAt(2)}},
		{m.Cosine(across), nil},
	} {
		_, err := m.Propagate(m.Divide(m.Constant(1), c.divisor), 0.95)
		assert.Equal(t, c.want, err)
	}
}

// TestRangesHoldAllValues: at any point within the ranges of the influences every
// node of a random model lies within its range.
func TestRangesHoldAllValues(t *testing.T) {
	forRandomModels(t, randomModels/10, func(what string, random *rand.Rand, m *Model, out Node) {
		needed := m.reachable(out)
		ranges := make([]interval, out+1)
		for i := range ranges {
			if needed[i] {
				ranges[i] = m.rangeOf(&m.nodes[i], ranges)
			}
		}
		for range 20 {
			v := m.values(out, func(in *Influence) float64 {
				r := practicalSupport(in.Distribution)
				return r.low + random.Float64()*(r.high-r.low)
			})
			for i, r := range ranges {
				by := 1e-12 * max(math.Abs(r.low), math.Abs(r.high))
				if needed[i] && !(r.low-by <= v[i] && v[i] <= r.high+by) {
					t.Errorf("%s, node %d: %v is not within %v", what, i, v[i], r)
				}
			}
		}
	})
}
