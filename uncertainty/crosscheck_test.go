package uncertainty

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty/near"
	"minim/uncertainty/rounding"
)

// TestNumericalTolerance: JCGM 101, 7.9.2: u = 0.00035 g to one digit is 0.0004,
// δ = 0.00005 g; u = 2 K, δ = 0.5 K. The rest constructed, about the places
// where the digit carries.
func TestNumericalTolerance(t *testing.T) {
	for u, want := range map[float64]float64{
		0.00035: 0.00005, 2: 0.5, 1.4: 0.5, 9.4: 0.5, 9.5: 5, 0.0949999: 0.005, 0.095: 0.05,
		math.Nextafter(9.5, 0): 0.5, 0.9499: 0.05, 0.9501: 0.5,
		1: 0.5, 10: 5, 1000: 500, 1e9: 5e8, 0.1: 0.05, 0.01: 0.005, 0.001: 0.0005, 1e-9: 5e-10,
		math.Nextafter(10, 0): 5, math.Nextafter(1000, 0): 500, math.Nextafter(1, 0): 0.5, 0: 0,
	} {
		near.Relative(t, fmt.Sprintf("δ for u = %v", u), want, rounding.Tolerance(u, 1), 1e-14)
	}
}

// check propagates, simulates and compares one node.
func check(t *testing.T, m *Model, out Node) (Analytic, MonteCarlo, CrossCheck) {
	t.Helper()
	a := propagate(t, m, out, 0.95)
	mc := simulate(t, m, out, Settings{Trials: 200_000, Seed: 21})
	c, err := m.CrossCheck(out, a, &mc)
	require.NoError(t, err)
	return a, mc, c
}

// TestCauses: constructed cases, each dominated by one cause, with the name of
// the influence that makes it among others that do not.
func TestCauses(t *testing.T) {
	skipUnderRace(t)
	small := StudentT{Mu: 0, Sigma: 0.02, Nu: 3} // no skewness, infinite kurtosis, and of no weight
	for _, c := range []struct {
		name           string
		distributions  []Distribution
		cause          Cause
		influence      string
		quoteSimulated bool
	}{
		{"normal sum", []Distribution{Normal{Mu: 0, Sigma: 3}, Normal{Mu: 1, Sigma: 4}}, noCause, "", false},
		{"a rectangle", []Distribution{PlusMinus(5)}, shaped, "a", true},
		{"a rectangle and normals", []Distribution{Normal{Mu: 0, Sigma: 0.3}, PlusMinus(5), Normal{Mu: 0, Sigma: 0.2}}, shaped, "b", true},
		{"a rectangle and a triangle", []Distribution{Peaked(2), PlusMinus(5)}, shaped, "b", true},
		{"a rectangle and few readings", []Distribution{small, PlusMinus(5)}, shaped, "b", true},
		{"a rectangle and a small gamma", []Distribution{Gamma{Mu: 0.1, Sigma: 0.1}, PlusMinus(5)}, shaped, "b", true},
		{"a gamma", []Distribution{Gamma{Mu: 10, Sigma: 5}}, skewed, "a", true},
		{"a gamma and a rectangle", []Distribution{PlusMinus(2), Gamma{Mu: 10, Sigma: 5}}, skewed, "b", true},
		{"a gamma and few readings", []Distribution{small, Gamma{Mu: 10, Sigma: 5}}, skewed, "b", true},
		{"two gammas", []Distribution{Gamma{Mu: 10, Sigma: 2}, Gamma{Mu: 5, Sigma: 5}}, skewed, "b", true},
	} {
		m, y := sumOf(c.distributions...)
		a, mc, got := check(t, m, y)
		assert.Equal(t, c.cause, got.Cause, c.name)
		assert.Equal(t, c.influence, codeOf(got.Influence), c.name)
		assert.Equal(t, c.cause == noCause, got.Agrees, c.name)
		assert.Equal(t, c.quoteSimulated, Quote(a, &mc, got).Simulated, c.name)
	}
}

// TestFewReadings: a dominant t-distribution agrees when its degrees of freedom
// are given, and is a matter of few readings when they are not.
func TestFewReadings(t *testing.T) {
	for nu, cause := range map[float64]Cause{3: noCause, 0: fewReadings} {
		m := new(Model)
		_, _, c := check(t, m, known(m, "few", StudentT{Mu: 0, Sigma: 5, Nu: 3}, nu))
		assert.Equal(t, cause, c.Cause, "degrees of freedom %v", nu)
	}
}

// TestCurvature: products and quotients over wide rectangles (constructed), with
// the influences that make it among others that do not.
func TestCurvature(t *testing.T) {
	wide := Rectangular{Low: 0.5, High: 1.5}
	for name, c := range map[string]struct {
		model     func(m *Model) Node
		influence string
		with      string
	}{
		"(1±0.5)(1±0.5)": {func(m *Model) Node { return m.Multiply(add(m, "x", wide), add(m, "y", wide)) }, "x", "y"},
		"1/(1±0.5)":      {func(m *Model) Node { return m.Divide(m.Constant(1), add(m, "x", wide)) }, "x", "x"},
		"N(0,0.3)²": {func(m *Model) Node {
			x := add(m, "x", Normal{Mu: 0, Sigma: 0.3})
			return m.Multiply(x, x)
		}, "x", "x"},
		"z/(1±0.5) + N": {func(m *Model) Node {
			return m.Add(add(m, "n", Normal{Mu: 0, Sigma: 0.01}), m.Divide(add(m, "z", Normal{Mu: 1, Sigma: 0.01}), add(m, "x", wide)))
		}, "x", "x"},
	} {
		m := new(Model)
		a, mc, got := check(t, m, c.model(m))
		assert.Equal(t, curved, got.Cause, name)
		assert.Equal(t, []string{c.influence, c.with}, []string{codeOf(got.Influence), codeOf(got.With)}, name)
		assert.Equal(t, Quoted{mc.Lower, mc.Upper, true, mc.Mean, mc.StandardDeviation}, Quote(a, &mc, got), name)
	}
}

// TestDominantRectangle: JCGM 101, 9.2.4: δ = 0.5 for two digits, 5 for one; the
// ends differ by 2.8760 (published 2.8 and 2.9): not validated at 0.5, validated
// at 5. The simulated interval is quoted all the same.
func TestDominantRectangle(t *testing.T) {
	one := PlusMinus(math.Sqrt(3))
	m, y := sumOf(one, one, one, PlusMinus(10*math.Sqrt(3)))
	a, mc, c := check(t, m, y)
	near.Relative(t, "δ for one digit", 5, c.Tolerance, 1e-15)
	near.Absolute(t, "d_low", 2.8760, c.DLow, 5*0.021)
	near.Absolute(t, "d_high", 2.8760, c.DHigh, 5*0.021)
	assert.Equal(t, false, c.DLow <= 0.5 || c.DHigh <= 0.5, "agrees at δ = 0.5")
	assert.Equal(t, true, c.Agrees)
	near.Relative(t, "of U", max(c.DLow, c.DHigh)/a.ExpandedUncertainty, c.OfExpanded, 1e-15)
	assert.Equal(t, Quoted{mc.Lower, mc.Upper, true, mc.Mean, mc.StandardDeviation}, Quote(a, &mc, c))
	assert.Equal(t, shaped, c.Cause, "what makes the simulated interval be quoted is named")
}

// TestTableOfFour: JCGM 101, 9.2.3: exact d = 0.0405933, u = 2, which one digit
// (δ = 0.5) and two (0.05) validate; the analytic interval is quoted.
func TestTableOfFour(t *testing.T) {
	one := PlusMinus(math.Sqrt(3))
	m, y := sumOf(one, one, one, one)
	a, mc, c := check(t, m, y)
	near.Absolute(t, "d_low", 0.0405933, c.DLow, 5*0.0105)
	assert.Equal(t, true, c.Agrees)
	assert.Equal(t, Quoted{a.Lower(), a.Upper(), false, a.Value, a.StandardUncertainty}, Quote(a, &mc, c))
}

// TestAgreesAtEachEnd: both differences, each up to δ itself. U is set to 4 and
// the ends to dyadic numbers, so that all is exact; δ is 0.5 for u = 2.
func TestAgreesAtEachEnd(t *testing.T) {
	m, y := sumOf(Normal{Mu: 10, Sigma: 2})
	a := propagate(t, m, y, 0.95)
	a.ExpandedUncertainty = 4
	mc := simulate(t, m, y, Settings{Trials: 10_000})
	for _, c := range []struct {
		lower, upper float64
		agrees       bool
		of           float64
	}{
		{6, 14, true, 0}, {6.5, 14.5, true, 0.125}, {5.5, 13.5, true, 0.125}, {6.25, 14, true, 0.0625}, {6, 14.125, true, 0.03125},
		{6.625, 14, false, 0.15625}, {5.375, 14, false, 0.15625}, {6, 14.75, false, 0.1875}, {6, 13.25, false, 0.1875},
	} {
		mc.Lower, mc.Upper = c.lower, c.upper
		got, err := m.CrossCheck(y, a, &mc)
		require.NoError(t, err)
		assert.Equal(t, c.agrees, got.Agrees, "%v to %v", c.lower, c.upper)
		assert.Equal(t, []float64{math.Abs(6 - c.lower), math.Abs(14 - c.upper), c.of}, []float64{got.DLow, got.DHigh, got.OfExpanded})
		assert.Equal(t, c.agrees && c.of <= 0.05, got.Cause == noCause, "a cause for each end that differs by more than 5 %% of U")
	}
}

// TestCauseOf: constructed by hand, y = 10 with U = 2: the largest of the three
// differences, each at either end.
func TestCauseOf(t *testing.T) {
	a := Analytic{Value: 10, ExpandedUncertainty: 2}
	for _, c := range []struct {
		linear, full interval
		want         Cause
	}{
		{interval{8.5, 11.5}, interval{8.5, 11.5}, shaped},
		{interval{7.5, 12.5}, interval{7.25, 12.5}, shaped},
		{interval{8.5, 12.5}, interval{8.5, 12.5}, skewed},
		{interval{7.5, 11.5}, interval{7.5, 11.75}, skewed},
		{interval{8, 12}, interval{7, 12}, curved},
		{interval{8, 12}, interval{8, 13}, curved},
		{interval{8.25, 11.75}, interval{8.75, 11.75}, curved},
		{interval{8.25, 11.75}, interval{8.25, 11.25}, curved},
	} {
		got, _ := causeOf(a, c.linear, c.full)
		assert.Equal(t, c.want, got, "linear %v to %v, full %v to %v", c.linear.low, c.linear.high, c.full.low, c.full.high)
	}
}

// TestSameU: u is compared with the standard deviation by the same δ, 0.5 for u = 2.
func TestSameU(t *testing.T) {
	m, y := sumOf(Normal{Mu: 10, Sigma: 2})
	a := propagate(t, m, y, 0.95)
	mc := simulate(t, m, y, Settings{Trials: 10_000})
	for deviation, same := range map[float64]bool{2: true, 2.5: true, 1.5: true, 2.625: false, 1.375: false, math.NaN(): false} {
		mc.StandardDeviation = deviation
		got, err := m.CrossCheck(y, a, &mc)
		require.NoError(t, err)
		assert.Equal(t, same, got.SameU(), "%v", deviation)
	}
}
