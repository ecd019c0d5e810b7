package uncertainty

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty/near"
)

// tableG2 is JCGM 100, table G.2, recomputed from exact quantiles; the columns
// 68.27, 95.45 and 99.73 % are the probabilities of ±1, ±2 and ±3 σ.
var tableG2 = map[float64][6]float64{
	1:           {1.8373372, 6.3137515, 12.706205, 13.96773, 63.656741, 235.8015},
	2:           {1.3212774, 2.9199856, 4.3026527, 4.5265367, 9.9248432, 19.206744},
	3:           {1.1968814, 2.3533634, 3.1824463, 3.3068222, 5.8409093, 9.2189405},
	4:           {1.1416266, 2.1318468, 2.7764451, 2.8693094, 4.6040949, 6.620206},
	5:           {1.1105066, 2.0150484, 2.5705818, 2.6486494, 4.032143, 5.5070797},
	8:           {1.0665284, 1.859548, 2.3060041, 2.3664158, 3.3553873, 4.2766325},
	10:          {1.0525624, 1.8124611, 2.2281389, 2.2836782, 3.1692727, 3.9569367},
	16:          {1.0322418, 1.7458837, 2.1199053, 2.16894, 2.9207816, 3.5441276},
	19:          {1.0270174, 1.7291328, 2.0930241, 2.1404937, 2.8609346, 3.4472332},
	30:          {1.0169468, 1.6972609, 2.0422725, 2.0868443, 2.7499957, 3.2703339},
	50:          {1.0101005, 1.675905, 2.0085591, 2.0512482, 2.6777933, 3.1571478},
	100:         {1.0050251, 1.6602343, 1.9839715, 2.0253091, 2.6258905, 3.0767556},
	math.Inf(1): {1, 1.6448536, 1.9599640, 2, 2.5758293, 3},
}

func columnsG2() [6]float64 {
	sigmas := func(k float64) float64 { return math.Erf(k / math.Sqrt2) }
	return [6]float64{sigmas(1), 0.90, 0.95, sigmas(2), 0.99, sigmas(3)}
}

func TestTableG2(t *testing.T) {
	for nu, row := range tableG2 {
		for i, p := range columnsG2() {
			near.Relative(t, fmt.Sprintf("t at p %v, ν %v", p, nu), row[i], CoverageFactor(p, nu), 1e-7)
		}
	}
}

// TestTableG2Published: the digits that JCGM 100, table G.2 prints, and table 1
// of H.1 (t95(5) = 2.57). For ν = 35, p = 90 % it prints 1.70, a misprint: the
// exact 1.6895725 rounds to 1.69.
func TestTableG2Published(t *testing.T) {
	for _, c := range []struct{ p, nu, want float64 }{
		{0.95, 1, 12.71}, {0.95, 5, 2.57}, {0.95, 19, 2.09}, {0.95, 100, 1.984},
		{0.90, 3, 2.35}, {0.99, 16, 2.92}, {0.90, 35, 1.69}, {0.99, 2, 9.92},
	} {
		near.Absolute(t, fmt.Sprintf("t at p %v, ν %v", c.p, c.nu), c.want, CoverageFactor(c.p, c.nu), 0.005)
	}
	near.Relative(t, "the misprint", 1.6895725, CoverageFactor(0.90, 35), 1e-7)
}

// TestNormalFactors: JCGM 100, 4.3.4 (1.64, 1.96, 2.58), 4.3.6 (p = 2/3: prints
// 0.967 σ, factor 1.033; exact 0.96742157), 4.3.5 (p = 1/2: 1.48 = 1/0.6745),
// G.5.2 note 2 (91.673 % for √3), G.6.6 (95.45 % for 2, 99.73 % for 3).
func TestNormalFactors(t *testing.T) {
	for _, c := range []struct{ p, want float64 }{
		{0.90, 1.6448536}, {0.95, 1.9599640}, {0.99, 2.5758293}, {2.0 / 3, 0.96742157}, {0.5, 1 / 1.4826022},
		{0.9167354833, math.Sqrt(3)}, {0.9544997361, 2}, {0.9973002039, 3},
	} {
		near.Relative(t, fmt.Sprintf("normal factor at %v", c.p), c.want, CoverageFactor(c.p, math.Inf(1)), 1e-7)
	}
}

// TestFactorsNear1 holds the far tail against closed forms: for ν = 1 and 2,
// k = cot(πq) and (1 - 2q)/√(2q(1-q)) with the tail q = (1 - p)/2.
func TestFactorsNear1(t *testing.T) {
	for _, p := range []float64{0.1, 0.5, 0.95, 0.999, 1 - 1e-9, 1 - 1e-12} {
		q := (1 - p) / 2
		near.Relative(t, "ν 1", 1/math.Tan(math.Pi*q), CoverageFactor(p, 1), 1e-7)
		near.Relative(t, "ν 2", (1-2*q)/math.Sqrt(2*q*(1-q)), CoverageFactor(p, 2), 1e-7)
	}
}

func TestFactorBetweenTableRows(t *testing.T) {
	for _, p := range columnsG2() {
		for nu := 1.0; nu < 60; nu++ {
			below, between, above := CoverageFactor(p, nu), CoverageFactor(p, nu+0.3), CoverageFactor(p, nu+1)
			assert.Equal(t, true, below > between && between > above, "t at p %v, ν %v + 0.3", p, nu)
		}
	}
	// JCGM 100, G.4.1 with its unrounded ν_eff: recomputed.
	near.Relative(t, "ν 18.998742", 2.0930334, CoverageFactor(0.95, 18.998742), 1e-7)
	// The Tartu pipette with its unrounded ν_eff lies between 72 and 73.
	near.Relative(t, "ν 72", 1.9934636, CoverageFactor(0.95, 72), 1e-7)
}

// TestFactorApproachesNormal: t = z + (z³ + z)/4ν + O(1/ν²) (Abramowitz and
// Stegun, 26.7.5), with no jump where the normal quantile takes over.
func TestFactorApproachesNormal(t *testing.T) {
	for _, nu := range []float64{1e4, 1e5, 1e6, 1e7, 9.99e7, 1.01e8, 1e12} {
		z := CoverageFactor(0.95, math.Inf(1))
		near.Relative(t, fmt.Sprintf("ν %g", nu), z+(z*z*z+z)/(4*nu), CoverageFactor(0.95, nu), 2e-8)
	}
}

func TestCoverageFactorPanics(t *testing.T) {
	for p, message := range map[float64]string{
		0:    "uncertainty: coverage probability 0 is not between 0 and 1",
		1:    "uncertainty: coverage probability 1 is not between 0 and 1",
		-0.5: "uncertainty: coverage probability -0.5 is not between 0 and 1",
		95:   "uncertainty: coverage probability 95 is not between 0 and 1",
	} {
		panics(t, message, func() { CoverageFactor(p, 5) })
	}
	panics(t, "uncertainty: coverage probability NaN is not between 0 and 1", func() { CoverageFactor(math.NaN(), 5) })
}
