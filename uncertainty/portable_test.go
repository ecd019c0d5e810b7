package uncertainty

import (
	"fmt"
	"hash/fnv"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty/distribution"
	"minim/uncertainty/portable"
)

// TestSameBytesOnEveryMachine: a model of all operations and distributions gives the
// figures that are kept here, to the last bit: of the law of propagation, of the second
// order, of a simulation and of its draws. They were written on amd64; the continuous
// integration runs this where products can be fused as well. Another model, or another
// stream of random numbers, changes them.
func TestSameBytesOnEveryMachine(t *testing.T) {
	skipUnderRace(t)
	m := new(Model)
	out := everything(m)
	a := propagate(t, m, out, 0.95)
	second, err := m.PropagateSecondOrder(out)
	require.NoError(t, err)
	mc := simulate(t, m, out, Settings{Trials: 20_000, Seed: 5})
	adaptive := simulate(t, m, out, Settings{Trials: 400_000, Seed: 6, Digits: 1})
	h := fnv.New64a()
	for i := range mc.Trials {
		fmt.Fprintf(h, "%x ", mc.tally.At(i))
	}
	assert.Equal(t, []string{
		"0x1.e948157760476p-02", "0x1.3c67749cede63p-02", "0x1.1298ea3d152fp+01", "0x1.4070247b62a87p-02",
		"0x1.48ff084e78207p-02", "0x1.5f84c7f5d7739p+00", "8ea926ad06021b33",
	}, []string{
		hex(a.Value), hex(a.StandardUncertainty), hex(a.CoverageFactor), hex(second.StandardUncertainty),
		hex(mc.StandardDeviation), hex(adaptive.Upper), fmt.Sprintf("%x", h.Sum64()),
	})
}

func hex(x float64) string { return fmt.Sprintf("%x", x) }

// everything is the sum of products of influences of all distributions, of a sine and of
// a cosine.
func everything(m *Model) Node {
	y := m.Constant(0.1)
	for i, d := range []Distribution{
		Normal{Mu: 1.1, Sigma: 0.1}, Rectangular{Low: 0.9, High: 1.2}, distribution.Triangular{Low: 0.7, High: 1.3}, Trapezoidal{0.8, 1.3, 0.3}, Arcsine{0.9, 1.15},
		InexactRectangular{0.7, 1.3, 0.1}, Gamma{Mu: 0.2, Sigma: 0.1}, Gamma{Mu: 0.2, Sigma: 0.3}, StudentT{Mu: 1, Sigma: 0.1, Nu: 7},
	} {
		x := known(m, fmt.Sprint(i), d, float64(5+i))
		y = m.Add(m.Multiply(y, x), m.Divide(m.Sine(x), m.Add(m.Constant(2), m.Cosine(y))))
	}
	return y
}

// TestSameChancesOnEveryMachine: chances and factors, to the last bit.
func TestSameChancesOnEveryMachine(t *testing.T) {
	h := fnv.New64a()
	for k := range 400 {
		z := float64(k-200) / 30
		nu := math.Sqrt(float64(k + 1))
		fmt.Fprintf(h, "%x %x ", portable.StudentCDF(z, nu), portable.StudentCDF(z, math.Inf(1)))
		p := (float64(k) + 0.5) / 400
		fmt.Fprintf(h, "%x %x %x ", CoverageFactor(p, nu), CoverageFactor(p, 100*nu*nu), CoverageFactor(p, math.Inf(1)))
	}
	assert.Equal(t, "4ea9d7354a0b10b3", fmt.Sprintf("%x", h.Sum64()))
}
