package random

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
			bits, state = Next(state)
			assert.Equal(t, want[i], bits)
		}
	}
}

// TestSplitMix64Integers repeats the published recurrence in big integers.
func TestSplitMix64Integers(t *testing.T) {
	s := new(Source)
	s.Key(20260101, 7, 3)
	start := s.State
	state := new(big.Int).SetUint64(start)
	for range 1000 {
		var bits uint64
		bits, start = Next(start)
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
		bits, _ := Next(state)
		assert.Equal(t, want, bits)
		x := Uniform(bits)
		assert.Equal(t, true, 0 < x && x < 1, "uniform value %v for the integer %d", x, bits)
	}
}

func TestUniform(t *testing.T) {
	const n = 1_000_000
	s := new(Source)
	s.Key(1, 2, 3)
	x := make([]float64, n)
	state := s.State
	for i := range x {
		var bits uint64
		bits, state = Next(state)
		x[i] = Uniform(bits)
	}
	mean, variance := stat.MeanVariance(x, nil)
	near.Absolute(t, "mean", 0.5, mean, 5*math.Sqrt(1.0/12/n))
	near.Relative(t, "variance", 1.0/12, variance, 5*math.Sqrt(0.8/n))
	near.Absolute(t, "lag-1 correlation", 0, stat.Correlation(x[1:], x[:n-1], nil), 5/math.Sqrt(n))
}

func TestStreamsAreKeyed(t *testing.T) {
	type key struct {
		seed, influence uint64
		block           int
	}
	stream := func(k key) []float64 {
		s := new(Source)
		s.Gammas(make([]float64, 3), 0.25) // what was drawn before does not matter
		s.Key(k.seed, k.influence, k.block)
		x := make([]float64, 100_000)
		s.Normals(x, 0, 1)
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
