package uncertainty

import (
	"math"
	"math/big"
	"testing"

	"github.com/stretchr/testify/assert"
	"gonum.org/v1/gonum/stat"

	"minim/uncertainty/near"
)

// TestSplitMix64 holds the generator against known answers, from memory: the
// public reference implementation (the same as Java's SplittableRandom) from
// state 0, and its widely used test vector from state 1234567.
func TestSplitMix64(t *testing.T) {
	for state, want := range map[uint64][]uint64{
		0:       {0xe220a8397b1dcdaf, 0x6e789e6aa1b965f4, 0x06c45d188009454f},
		1234567: {6457827717110365317, 3203168211198807973, 9817491932198370423},
	} {
		var bits uint64
		for i := range want {
			bits, state = next(state)
			assert.Equal(t, want[i], bits)
		}
	}
}

// TestSplitMix64Integers repeats the published recurrence in big integers.
func TestSplitMix64Integers(t *testing.T) {
	s := newSource()
	s.key(20260101, 7, 3)
	start := s.state
	state := new(big.Int).SetUint64(start)
	for range 1000 {
		var bits uint64
		bits, start = next(start)
		state.Add(state, new(big.Int).SetUint64(0x9e3779b97f4a7c15))
		z := low64(state)
		z = low64(new(big.Int).Mul(shifted(z, 30), new(big.Int).SetUint64(0xbf58476d1ce4e5b9)))
		z = low64(new(big.Int).Mul(shifted(z, 27), new(big.Int).SetUint64(0x94d049bb133111eb)))
		assert.Equal(t, shifted(z, 31).Uint64(), bits)
	}
}

func low64(z *big.Int) *big.Int {
	return new(big.Int).Mod(z, new(big.Int).Lsh(big.NewInt(1), 64))
}

func shifted(z *big.Int, by uint) *big.Int {
	return new(big.Int).Xor(z, new(big.Int).Rsh(z, by))
}

// extremes are the states that yield the least and the greatest integer (found
// by inverting the output function; the first is -γ).
var extremes = map[uint64]uint64{-0x9e3779b97f4a7c15 & math.MaxUint64: 0, 0x31628af67b2131ab: math.MaxUint64}

func TestUniformIsOpen(t *testing.T) {
	for state, want := range extremes {
		bits, _ := next(state)
		assert.Equal(t, want, bits)
		u, v := halves(bits)
		for _, x := range []float64{uniform(bits), u, v} {
			assert.Equal(t, true, 0 < x && x < 1, "uniform value %v for the integer %d", x, bits)
		}
	}
}

func TestUniform(t *testing.T) {
	const n = 1_000_000
	s := newSource()
	s.key(1, 2, 3)
	whole, left, right := make([]float64, n), make([]float64, n), make([]float64, n)
	state := s.state
	for i := range n {
		var bits uint64
		bits, state = next(state)
		whole[i] = uniform(bits)
		left[i], right[i] = halves(bits)
		if whole := uint64(left[i]*0x1p32)<<32 | uint64(right[i]*0x1p32); whole != bits {
			t.Fatalf("the halves make %#x of %#x", whole, bits)
		}
	}
	for _, x := range [][]float64{whole, left, right} {
		mean, variance := stat.MeanVariance(x, nil)
		near.Absolute(t, "mean", 0.5, mean, 5*math.Sqrt(1.0/12/n))
		near.Relative(t, "variance", 1.0/12, variance, 5*math.Sqrt(0.8/n))
		near.Absolute(t, "lag-1 correlation", 0, stat.Correlation(x[1:], x[:n-1], nil), 5/math.Sqrt(n))
	}
	near.Absolute(t, "correlation of the halves", 0, stat.Correlation(left, right, nil), 5/math.Sqrt(n))
}

func TestStreamsAreKeyed(t *testing.T) {
	type key struct {
		seed, influence uint64
		block           int
	}
	stream := func(k key) []float64 {
		s := newSource()
		Gamma{1, 2}.fill(make([]float64, 3), s) // what was drawn before does not matter
		s.key(k.seed, k.influence, k.block)
		x := make([]float64, 100_000)
		Normal{0, 1}.fill(x, s)
		return x
	}
	keys := []key{{0, 0, 0}, {1, 0, 0}, {0, 1, 0}, {0, 0, 1}, {1, 1, 0}, {1, 0, 1}, {0, 1, 1}, {2, 0, 0}, {0, 2, 0}, {0, 0, 2}}
	for i, a := range keys {
		x := stream(a)
		assert.Equal(t, x, stream(a), "the same key")
		for _, b := range keys[:i] {
			near.Absolute(t, "correlation of two streams", 0, stat.Correlation(x, stream(b), nil), 5/math.Sqrt(1e5))
		}
	}
}

func TestStreamKey(t *testing.T) {
	m, seen := new(Model), map[uint64]Influence{}
	for _, in := range []Influence{
		{Code: "bias"}, {Owner: Owner{Name: "bias"}}, {Owner: Owner{Name: "a"}, Code: "bc"}, {Owner: Owner{Name: "ab"}, Code: "c"},
		{Owner: Owner{Name: "pipette 1"}, Code: "bias"}, {Owner: Owner{Name: "pipette 2"}, Code: "bias"}, {Owner: Owner{Name: "pipette 1"}, Code: "reading"},
	} {
		key := m.streamKey(&in)
		_, taken := seen[key]
		assert.Equal(t, false, taken, "%v has the key of %v", in, seen[key])
		seen[key] = in
	}
	a, b := Influence{Owner: Owner{Name: "o"}, Code: "n", Unit: "g"}, Influence{Owner: Owner{Name: "o"}, Code: "n", Nominal: 1}
	assert.Equal(t, m.streamKey(&a), m.streamKey(&b), "owner and code alone make the key")
}
