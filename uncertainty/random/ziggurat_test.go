package random

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"

	"minim/uncertainty/near"
)

// edge is where layer i ends, from the base up; edge(256) is the middle.
func edge(i int) float64 {
	if i == len(layers) {
		return 0
	}
	return layers[i].scale * 0x1p53
}

// TestLayers: equal areas that follow the density and close at the top. The
// area is constructed, from tailStart with 30 digits. (Marsaglia and Tsang have
// 0.00492867323399, from memory; the last two digits do not fit their r.)
func TestLayers(t *testing.T) {
	near.Absolute(t, "top", 1, heights[len(layers)], 1e-12)
	for i := range layers {
		area := edge(i) * (heights[i+1] - heights[i])
		near.Relative(t, fmt.Sprintf("area of layer %d", i), 0.0049286732339746549, area, 5e-12)
		near.Absolute(t, fmt.Sprintf("height of layer %d", i), math.Exp(-edge(i+1)*edge(i+1)/2), heights[i+1], 0x1p-36)
		by := 1e-15
		if i == len(layers)-1 {
			by = 1e-6 // √(2 (1 - top))
		}
		near.Absolute(t, fmt.Sprintf("inner edge of layer %d", i), edge(i+1), float64(layers[i].inner)*layers[i].scale, by)
	}
	tail := math.Sqrt(2*math.Pi) * distuv.UnitNormal.Survival(edge(1))
	near.Relative(t, "base and tail", edge(0)*heights[1], edge(1)*heights[1]+tail, 5e-12)
}

// normals calls f for each of n standard normal values, drawn in blocks.
func normals(n int, f func(z float64)) {
	s := new(Source)
	x := make([]float64, BlockSize)
	for b := 0; n > 0; b++ {
		s.Key(5, 6, b)
		s.Normals(x, 0, 1)
		for _, z := range x[:min(n, len(x))] {
			f(z)
		}
		n -= len(x)
	}
}

// TestNormalTail counts what lies beyond, on each side, and holds it within
// five standard deviations of the binomial distribution. The tail of the
// ziggurat starts at 3.654.
func TestNormalTail(t *testing.T) {
	const n = 10_000_000
	limits := []float64{3, 3.5, 3.65, edge(1), 3.75, 4, 4.5, 5}
	low, high := make([]float64, len(limits)), make([]float64, len(limits))
	normals(n, func(z float64) {
		for i, limit := range limits {
			if math.Abs(z) <= limit {
				break
			}
			if z < 0 {
				low[i]++
			} else {
				high[i]++
			}
		}
	})
	for i, limit := range limits {
		p := distuv.UnitNormal.Survival(limit)
		by := 5 * math.Sqrt(n*p*(1-p))
		near.Absolute(t, fmt.Sprintf("count below -%v", limit), n*p, low[i], by)
		near.Absolute(t, fmt.Sprintf("count above %v", limit), n*p, high[i], by)
	}
}

// TestTail holds draws beyond tailStart against the normal distribution by the
// Kolmogorov-Smirnov test (limit one in a thousand).
func TestTail(t *testing.T) {
	const n = 1_000_000
	x := make([]float64, n)
	state := uint64(7)
	for i := range x {
		x[i], state = tail(state)
	}
	slices.Sort(x)
	far := 0.0
	for i, v := range x {
		p := 1 - distuv.UnitNormal.Survival(v)/distuv.UnitNormal.Survival(tailStart)
		far = max(far, p-float64(i)/n, float64(i+1)/n-p)
	}
	near.Absolute(t, "greatest distance from the distribution function", 0, far, 1.95/math.Sqrt(n))
}

// TestNormalBins holds counts against the chi-square distribution (limit one in
// ten thousand): in 2000 bins of equal probability, and in bins that end where
// the layers do.
func TestNormalBins(t *testing.T) {
	const n = 4_000_000
	var equal, ends []float64
	for i := 1; i < 2000; i++ {
		equal = append(equal, distuv.UnitNormal.Quantile(float64(i)/2000))
	}
	for i := range layers {
		ends = append(ends, -edge(i), edge(i))
	}
	ends = append(ends, 0)
	slices.Sort(ends)
	for name, edges := range map[string][]float64{"equal bins": equal, "layers": ends} {
		counts, expected := make([]float64, len(edges)+1), make([]float64, len(edges)+1)
		normals(n, func(z float64) {
			i, _ := slices.BinarySearch(edges, z)
			counts[i]++
		})
		below := 0.0
		for i, e := range append(edges, math.Inf(1)) {
			p := distuv.UnitNormal.CDF(e)
			expected[i] = n * (p - below)
			below = p
		}
		limit := distuv.ChiSquared{K: float64(len(edges))}.Quantile(0.9999)
		near.Absolute(t, name, limit/2, stat.ChiSquare(counts, expected), limit/2)
	}
}

// TestWedges counts what lies in the inner halves of the steps between the
// edges of the layers, where the height in the layer decides, and holds it
// within five standard deviations of the binomial distribution.
func TestWedges(t *testing.T) {
	const n = 10_000_000
	var edges, middles []float64
	p := 0.0
	for i := len(layers); i > 0; i-- {
		from, to := edge(i), edge(i-1)
		edges, middles = append(edges, to), append(middles, (from+to)/2)
		p += 2 * (distuv.UnitNormal.CDF((from+to)/2) - distuv.UnitNormal.CDF(from))
	}
	count := 0.0
	normals(n, func(z float64) {
		z = math.Abs(z)
		if i, _ := slices.BinarySearch(edges, z); i < len(edges) && z < middles[i] {
			count++
		}
	})
	near.Absolute(t, "count", n*p, count, 5*math.Sqrt(n*p*(1-p)))
}

// TestConsecutiveNormals: neither values, nor their sizes, nor their signs hang
// on those before.
func TestConsecutiveNormals(t *testing.T) {
	const n = 2_000_000
	var values, squares, signs []float64
	normals(n, func(z float64) {
		values, squares, signs = append(values, z), append(squares, z*z), append(signs, math.Copysign(1, z))
	})
	for name, x := range map[string][]float64{"values": values, "squares": squares, "signs": signs} {
		near.Absolute(t, "lag-1 correlation of "+name, 0, stat.Correlation(x[1:], x[:n-1], nil), 5/math.Sqrt(n))
		near.Absolute(t, "lag-2 correlation of "+name, 0, stat.Correlation(x[2:], x[:n-2], nil), 5/math.Sqrt(n))
	}
	near.Absolute(t, "correlation of sign and size", 0, stat.Correlation(signs, squares, nil), 5/math.Sqrt(n))
}

// TestZigguratIsSymmetric: the bits of the sign turn it, and nothing else, so
// the extremes are of equal size and none is zero.
func TestZigguratIsSymmetric(t *testing.T) {
	for _, bits := range []uint64{0, 0x3ff, 1 << 10, 1<<63 - 1, 0x0123456789abcdef} {
		layer := bits & 0xff
		z, inside := ziggurat(bits)
		mirrored, alike := ziggurat(^bits&^0xff | layer)
		assert.Equal(t, z, -mirrored)
		assert.Equal(t, inside, alike)
		assert.Equal(t, true, z > 0, "bits %#x", bits)
	}
}
