package uncertainty

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty/near"
)

func TestVariances(t *testing.T) {
	for _, c := range []struct {
		source string
		d      Distribution
		want   float64
	}{
		// JCGM 101, 6.4.2, 6.4.5 and 6.4.9.
		{"6.4.2", Rectangular{2, 5}, 9.0 / 12},
		{"6.4.5", Triangular{2, 5}, 9.0 / 24},
		{"6.4.9", StudentT{7, 2, 6}, 4 * 6.0 / 4},
		// Constructed, closed form: t with σ = 1, ν = 5 and 3.
		{"t, 5", StudentT{0, 1, 5}, 1.2909944 * 1.2909944},
		{"t, 3", StudentT{0, 1, 3}, 1.7320508 * 1.7320508},
		// The variance of a stated mean and standard deviation.
		{"gamma", Gamma{0.04, 0.02}, 0.0004},
		{"normal", Normal{1, 0.02}, 0.0004},
	} {
		near.Relative(t, c.source, c.want, c.d.Variance(), 1e-7)
	}
}

// TestStandardUncertainty: JCGM 100, 4.3.7 example 1, 4.4.5, 4.4.6 and F.2.2.1;
// QUAM A1 (flask ±0.1 mL, triangular). Published rounding, then recomputed.
func TestStandardUncertainty(t *testing.T) {
	for _, c := range []struct {
		source                 string
		d                      Distribution
		published, by, correct float64
	}{
		{"4.3.7 ex. 1", PlusMinus(0.40e-6), 0.23e-6, 0.005e-6, 2.3094011e-7},
		{"4.4.5", Rectangular{96, 104}, 2.3, 0.05, 2.3094011},
		{"4.4.6", Triangular{96, 104}, 1.6, 0.05, 1.6329932},
		{"F.2.2.1", PlusMinus(0.5), 0.29, 0.005, 0.28867513},
		{"QUAM A1", Peaked(0.1), 0.04, 0.005, 0.040824829},
		// The t keeps its scale, whatever its variance.
		{"t", StudentT{10, 0.04, 3}, 0.04, 0, 0.04},
	} {
		u := c.d.StandardUncertainty()
		near.Absolute(t, c.source+", published", c.published, u, c.by)
		near.Relative(t, c.source, c.correct, u, 1e-7)
	}
}

// TestHalfWidths: half-width of the central interval over the standard
// deviation, constructed, closed forms: normal; rectangular p√3; triangular
// √6(1 - √(1-p)).
func TestHalfWidths(t *testing.T) {
	p := []float64{0.6827, 0.90, 0.95, 0.9545, 0.99, 0.9973}
	for _, c := range []struct {
		d    Distribution
		want []float64
	}{
		{Normal{3, 2}, []float64{1.0000217, 1.6448536, 1.9599640, 2.0000024, 2.5758293, 2.9999770}},
		{Rectangular{2, 4}, []float64{1.1824711, 1.5588457, 1.6454483, 1.6532425, 1.7147303, 1.7273743}},
		{Triangular{2, 4}, []float64{1.0697072, 1.6748931, 1.9017672, 1.9269957, 2.2045408, 2.3222105}},
	} {
		for i, want := range c.want {
			k := (c.d.Quantile((1+p[i])/2) - c.d.Mean()) / c.d.StandardUncertainty()
			near.Relative(t, fmt.Sprintf("%#v at %v", c.d, p[i]), want, k, 1e-7)
		}
	}
}

func TestMomentsThatDoNotExist(t *testing.T) {
	assert.Equal(t, true, math.IsInf(StudentT{0, 1, 2}.Variance(), 1))
	assert.Equal(t, true, math.IsNaN(StudentT{0, 1, 3}.Skewness()))
	assert.Equal(t, true, math.IsInf(StudentT{0, 1, 4}.Kurtosis(), 1))
}

// TestUnsound: what is no distribution is refused before it is drawn from.
func TestUnsound(t *testing.T) {
	for _, d := range []Distribution{
		Normal{math.NaN(), 1}, Normal{0, -1}, Normal{0, math.Inf(1)}, Rectangular{1, 0}, Triangular{1, 0},
		Gamma{1, 0}, Gamma{0, 1}, Gamma{0, 0}, Gamma{-1, 1}, StudentT{0, 1, 0}, StudentT{0, 1, -1},
		StudentT{0, 1, math.NaN()}, StudentT{0, 1, math.Inf(1)},
	} {
		message := fmt.Sprintf("uncertainty: influence \"x\": %#v is not a distribution", d)
		panics(t, message, func() { add(new(Model), "x", d) })
	}
	panics(t, `uncertainty: influence "x" has no distribution`, func() { add(new(Model), "x", nil) })
}
