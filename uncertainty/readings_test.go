package uncertainty

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty/near"
)

// TestReadings: JCGM 100, 4.4.3 and table 1, twenty temperatures. Published
// mean 100.14, s 1.489 and s of the mean 0.333; recomputed 100.145, 1.4888445
// and 0.33291575.
func TestReadings(t *testing.T) {
	mean, s, nu := Readings([]float64{96.90, 98.18, 98.25, 98.61, 99.03, 99.49, 99.56, 99.74, 99.89, 100.07,
		100.33, 100.42, 100.68, 100.95, 101.11, 101.20, 101.57, 101.84, 102.36, 102.72})
	near.Relative(t, "mean", 100.145, mean, 1e-14)
	near.Absolute(t, "s, published", 1.489, s, 0.0005)
	near.Relative(t, "s", 1.4888445, s, 1e-7)
	near.Relative(t, "s of the mean", 0.33291575, s/math.Sqrt(20), 1e-7)
	assert.Equal(t, 19.0, nu)
}

// TestReadingsH2: JCGM 100, H.2, five sets. Published s of the means 0.0032 V,
// 0.0095 mA and 0.00075; recomputed as below.
func TestReadingsH2(t *testing.T) {
	for _, c := range []struct {
		values    []float64
		mean, sOf float64
	}{
		{[]float64{5.007, 4.994, 5.005, 4.990, 4.999}, 4.9990, 0.0032093613},
		{[]float64{19.663, 19.639, 19.640, 19.685, 19.678}, 19.6610, 0.0094710084},
		{[]float64{1.0456, 1.0438, 1.0468, 1.0428, 1.0433}, 1.04446, 0.00075206383},
	} {
		mean, s, nu := Readings(c.values)
		near.Relative(t, "mean", c.mean, mean, 1e-14)
		near.Relative(t, "s of the mean", c.sOf, s/math.Sqrt(5), 1e-7)
		assert.Equal(t, 4.0, nu)
	}
}

// TestCertifiedReadings: the NIST Statistical Reference Datasets with their
// certified values. The data of the last two NumAcc sets cannot be held exactly
// in a double: the SD is good to about 9 and 8 digits.
func TestCertifiedReadings(t *testing.T) {
	for _, c := range []struct {
		name    string
		values  []float64
		mean, s float64
		within  float64
	}{
		{"NumAcc1", []float64{10000001, 10000003, 10000002}, 10000002, 1, 0},
		{"NumAcc2", alternating(1), 1.2, 0.1, 1e-13},
		{"NumAcc3", alternating(1000000), 1000000.2, 0.1, 2e-9},
		{"NumAcc4", alternating(10000000), 10000000.2, 0.1, 2e-8},
		{"Michelso", michelso, 299.8524, 0.0790105478190518, 1e-12},
		{"Mavro", mavro, 2.001856, 0.000429123454003053, 1e-12},
		{"Lottery", lottery, 518.958715596330, 291.699727470969, 1e-14},
	} {
		mean, s, nu := Readings(c.values)
		near.Relative(t, c.name+": mean", c.mean, mean, 1e-14)
		near.Relative(t, c.name+": s", c.s, s, c.within)
		assert.Equal(t, float64(len(c.values)-1), nu)
	}
}

// alternating is base + 0.2, then 500 times base + 0.1 and base + 0.3 (for base
// 1 the NIST set is 1.2, 1.1, 1.3).
func alternating(base float64) []float64 {
	values := []float64{base + 0.2}
	for range 500 {
		values = append(values, base+0.1, base+0.3)
	}
	return values
}

func TestTooFewReadings(t *testing.T) {
	for _, few := range [][]float64{nil, {1}} {
		panics(t, "uncertainty: a standard deviation needs at least two readings", func() { Readings(few) })
	}
}
