package uncertainty

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"gonum.org/v1/gonum/stat"

	"minim/uncertainty/near"
	"minim/uncertainty/random"
)

// halves makes two independent values in the open interval (0, 1), each of
// half of the bits: their resolution is 2^-32.
func halves(bits uint64) (u, v float64) {
	return (float64(int64(bits>>32)) + 0.5) * 0x1p-32, (float64(uint32(bits)) + 0.5) * 0x1p-32
}

// TestHalves: both are of all bits, open, even and independent.
func TestHalves(t *testing.T) {
	for _, bits := range []uint64{0, math.MaxUint64} {
		u, v := halves(bits)
		assert.Equal(t, true, 0 < u && u < 1 && 0 < v && v < 1, "%v and %v", u, v)
	}
	const n = 1_000_000
	left, right := make([]float64, n), make([]float64, n)
	state := uint64(3)
	for i := range n {
		var bits uint64
		bits, state = random.Next(state)
		left[i], right[i] = halves(bits)
		if whole := uint64(left[i]*0x1p32)<<32 | uint64(right[i]*0x1p32); whole != bits {
			t.Fatalf("the halves make %#x of %#x", whole, bits)
		}
	}
	for _, x := range [][]float64{left, right} {
		mean, variance := stat.MeanVariance(x, nil)
		near.Absolute(t, "mean", 0.5, mean, 5*math.Sqrt(1.0/12/n))
		near.Relative(t, "variance", 1.0/12, variance, 5*math.Sqrt(0.8/n))
		near.Absolute(t, "lag-1 correlation", 0, stat.Correlation(x[1:], x[:n-1], nil), 5/math.Sqrt(n))
	}
	near.Absolute(t, "correlation of the halves", 0, stat.Correlation(left, right, nil), 5/math.Sqrt(n))
}
