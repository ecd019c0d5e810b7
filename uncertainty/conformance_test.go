package uncertainty

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty/near"
)

var (
	noLower = math.Inf(-1)
	noUpper = math.Inf(1)
)

// conformanceCases are the examples of JCGM 106. 7.3.3 prints the probabilities
// 0.92 and 0.99; 7.4 prints 0.93 - 0.27 = 0.66; recomputed at full precision
// (with z rounded to 1.5 and -0.6, 7.4 gives 0.65893968).
var conformanceCases = []struct {
	clause             string
	y, u               float64
	limits             Limits
	published, correct float64
}{
	{"7.3.3 ex. 1", -5.47, 0.05, Limits{noLower, -5.40}, 0.92, 0.91924334},
	{"7.3.3 ex. 2", 509.7, 8.6, Limits{490, noUpper}, 0.99, 0.98900955},
	{"7.4", 13.6, 1.8, Limits{12.5, 16.3}, 0.66, 0.66262979},
	// 7.6.2 and 7.7.5 with C_m = T/4u = 1: limits 0 to 1, u = 1/4.
	{"7.7.5, middle", 0.5, 0.25, Limits{0, 1}, 0.95, 0.95449974},
	{"7.7.5, lower end", 0.44905318, 0.25, Limits{0, 1}, 0.95, 0.95},
	{"7.7.5, upper end", 0.55094682, 0.25, Limits{0, 1}, 0.95, 0.95},
	// Table 1: one-sided z for 0.80 to 0.999.
	{"table 1, 0.80", -0.84162123, 1, Limits{noLower, 0}, 0.80, 0.80},
	{"table 1, 0.95", 1.6448536, 1, Limits{0, noUpper}, 0.95, 0.95},
	{"table 1, 0.999", -3.0902323, 1, Limits{noLower, 0}, 0.999, 0.999},
	// 8.3.2.3: guarded by 2 u, 2.3 % at the limit.
	{"8.3.2.3", 8, 1, Limits{noLower, 10}, 0.977, 1 - 0.022750132},
	{"at the limit", 10, 1, Limits{noLower, 10}, 0.5, 0.5},
	{"no limits", 10, 1, Limits{noLower, noUpper}, 1, 1},
}

func TestConformance(t *testing.T) {
	for _, c := range conformanceCases {
		p := Analytic{Value: c.y, StandardUncertainty: c.u}.ConformanceProbability(c.limits)
		near.Absolute(t, c.clause+", published", c.published, p, 0.005)
		near.Relative(t, c.clause, c.correct, p, 2e-8)
	}
}

// TestConformanceSimulated: within five standard errors √(p(1-p)/M).
func TestConformanceSimulated(t *testing.T) {
	for _, c := range conformanceCases {
		m, y := sumOf(Normal{Mu: c.y, Sigma: c.u})
		mc := simulate(t, m, y, Settings{Trials: 200_000, Seed: 31})
		within := 5 * math.Sqrt(c.correct*(1-c.correct)/200_000)
		near.Absolute(t, c.clause, c.correct, mc.ConformanceProbability(c.limits), within)
	}
}

// TestFarTails: constructed; Φ(-10) = 7.6198530e-24 (Abramowitz and Stegun,
// table 26.2: -log10 = 23.11805). The chance outside on the other side is kept.
func TestFarTails(t *testing.T) {
	a := Analytic{Value: 0, StandardUncertainty: 1}
	near.Relative(t, "above", 7.6198530e-24, a.ConformanceProbability(Limits{10, noUpper}), 1e-7)
	near.Relative(t, "below", 7.6198530e-24, a.ConformanceProbability(Limits{noLower, -10}), 1e-7)
	near.Relative(t, "between", 7.6198530e-24, a.ConformanceProbability(Limits{10, 20}), 1e-7)
}

func TestConformanceWithoutUncertainty(t *testing.T) {
	for _, c := range []struct {
		y    float64
		want float64
	}{{0.9, 0}, {1, 1}, {1.5, 1}, {2, 1}, {2.1, 0}} {
		a := Analytic{Value: c.y}
		assert.Equal(t, c.want, a.ConformanceProbability(Limits{1, 2}), "value %v", c.y)
	}
}

func TestLimitsAreInclusive(t *testing.T) {
	mc := MonteCarlo{Trials: 8, tally: ranked(t, []float64{-1, 0, 1, 1, 2, 3, 3, 4})}
	for _, c := range []struct {
		limits Limits
		inside float64
	}{
		{Limits{1, 3}, 5}, {Limits{noLower, 3}, 7}, {Limits{1, noUpper}, 6}, {Limits{noLower, noUpper}, 8},
		{Limits{1.5, 2.5}, 1}, {Limits{2, 2}, 1}, {Limits{-1, 0}, 2}, {Limits{5, 6}, 0}, {Limits{-9, -2}, 0},
		{Limits{math.Nextafter(1, 2), math.Nextafter(3, 2)}, 1}, {Limits{3, 1}, 0},
	} {
		assert.Equal(t, c.inside/8, mc.ConformanceProbability(c.limits), fmt.Sprint(c.limits))
	}
}

func TestPermits(t *testing.T) {
	assert.Equal(t, true, Limits{1, 2}.Permits(1) && Limits{1, 2}.Permits(2) && Limits{noLower, noUpper}.Permits(0))
	assert.Equal(t, false, Limits{1, 2}.Permits(math.Nextafter(1, 0)) || Limits{1, 2}.Permits(math.Nextafter(2, 3)))
	assert.Equal(t, false, Limits{1, 2}.Permits(math.NaN()))
}

// TestWithin: constructed, distances from 2 are 0, 0.5, 1, 3, 5 and 6.
func TestWithin(t *testing.T) {
	mc := MonteCarlo{Trials: 6, tally: ranked(t, []float64{-4, -1, 1, 2, 2.5, 7})}
	for _, c := range []struct{ p, want float64 }{
		{0.3, 0.5}, {0.5, 1}, {0.6, 3}, {4.0 / 6, 3}, {0.7, 5}, {5.0 / 6, 5}, {0.9, 6}, {1, 6},
	} {
		near.Relative(t, fmt.Sprint("half-width for ", c.p), c.want, mc.Within(2, c.p), 1e-15)
	}
	// Normal: the coverage factor itself, within five standard errors in p.
	m, y := sumOf(Normal{Mu: 10, Sigma: 2})
	simulated := simulate(t, m, y, Settings{Trials: 200_000, Seed: 32})
	half := simulated.Within(10, 0.95) / 2
	near.Absolute(t, "p of the half-width", 0.95, math.Erf(half/math.Sqrt2), 5*math.Sqrt(0.95*0.05/200_000))
}
