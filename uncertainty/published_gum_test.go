package uncertainty

import (
	"math"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"

	"minim/uncertainty/distribution"
)

// gumExamples are those of JCGM 100:2008.
var gumExamples = map[string]example{
	"4.4.3":           temperatures,
	"4.3.3 to 4.3.6":  statedCoverage,
	"limits":          statedLimits,
	"4.3.9 note 2":    limitsOfALimit,
	"5.1.5":           voltmeter,
	"5.2.2 note 1":    resistorsInSeries,
	"F.1.2.3 ex. 2":   calibratedTogether,
	"F.2.4.4":         cosineError,
	"H.1":             endGauge,
	"H.1 from table":  endGaugeFromTable,
	"H.1 simulated":   endGaugeSimulated,
	"H.2 readings":    impedanceReadings,
	"H.2 approach 1":  impedanceFromMeans,
	"H.2 from table":  impedanceFromTable,
	"H.2 table H.5":   impedanceUncorrelated,
	"H.2 approach 2":  impedanceBySets,
	"H.2 simulated":   impedanceSimulated,
	"H.3":             thermometer,
	"H.3 simulated":   thermometerSimulated,
	"G.2.2":           threeRectangles,
	"G.4.1":           productOfMeans,
	"Table G.1":       rectangleCoverage,
	"G.5.2 and G.6.6": normalCoverage,
	"Table E.1":       spreadOfReadings,
}

var infinity = math.Inf(1)

// sigmas is the probability of ±k standard deviations of a normal distribution.
func sigmas(k float64) float64 { return math.Erf(k / math.Sqrt2) }

func temperatures(testing.TB) quantities {
	readings := []float64{96.90, 98.18, 98.25, 98.61, 99.03, 99.49, 99.56, 99.74, 99.89, 100.07,
		100.33, 100.42, 100.68, 100.95, 101.11, 101.20, 101.57, 101.84, 102.36, 102.72}
	mean, s, nu := Readings(readings)
	return exactly(map[string]float64{"mean": mean, "s": s, "s of the mean": s / math.Sqrt(20), "ν": nu})
}

// statedCoverage turns statements such as "±129 µΩ at 99 %" into u.
func statedCoverage(testing.TB) quantities {
	half, twoThirds := CoverageFactor(0.5, infinity), CoverageFactor(2.0/3, infinity)
	return exactly(map[string]float64{
		"4.3.3 u/µg": 240 / CoverageFactor(sigmas(3), infinity), "4.3.4 u/µΩ": 129 / CoverageFactor(0.99, infinity),
		"4.3.4 factor 90 %": CoverageFactor(0.90, infinity), "4.3.4 factor 95 %": CoverageFactor(0.95, infinity),
		"4.3.4 factor 99 %": CoverageFactor(0.99, infinity),
		"4.3.5 factor":      1 / half, "4.3.5 u/mm": 0.04 / half, "4.3.5 u²/mm²": 0.04 * 0.04 / half / half,
		"4.3.6 deviate": twoThirds, "4.3.6 factor": 1 / twoThirds,
	})
}

func statedLimits(testing.TB) quantities {
	copper, scale := PlusMinus(0.40e-6), PlusMinus(14e-6*0.928571+2e-6)
	return exactly(map[string]float64{
		"4.3.7 ex. 1 u²": variance(copper), "4.3.7 ex. 1 u": copper.Summary().StandardUncertainty,
		"4.3.7 ex. 2 u²/V²": variance(scale), "4.3.7 ex. 2 u/V": scale.Summary().StandardUncertainty,
		"4.3.8 u":               Rectangular{Low: -0.12e-6, High: 0.40e-6}.Summary().StandardUncertainty,
		"4.4.5 u":               Rectangular{Low: 96, High: 104}.Summary().StandardUncertainty,
		"4.4.6 u":               distribution.Triangular{Low: 96, High: 104}.Summary().StandardUncertainty,
		"F.2.2.1 u":             PlusMinus(0.5).Summary().StandardUncertainty,
		"H.1.3.4 u":             Arcsine{-0.5, 0.5}.Summary().StandardUncertainty,
		"4.3.9 6 u²/a² for β 0": 6 * variance(Trapezoidal{-1, 1, 0}), "4.3.9 6 u²/a² for β 1": 6 * variance(Trapezoidal{-1, 1, 1}),
	})
}

// limitsOfALimit: by how much u grows when the limit of a rectangle is itself
// known to 30 %, taken as a second rectangle.
func limitsOfALimit(t testing.TB) quantities {
	m, y := sumOf(PlusMinus(1), PlusMinus(0.3))
	return exactly(map[string]float64{"growth of u/%": 100 * (standardUncertainty(t, m, y)/PlusMinus(1).Summary().StandardUncertainty - 1)})
}

// voltmeter is V = mean + correction, in V.
func voltmeter(t testing.TB) quantities {
	m, y := sumOf(Normal{Mu: 0.928571, Sigma: 12e-6}, PlusMinus(14e-6*0.928571+2e-6))
	u := standardUncertainty(t, m, y)
	return exactly(map[string]float64{"u²/V²": u * u, "u/V": u, "u/V relative": u / m.Expected(y)})
}

// resistorsInSeries: ten resistors of 1000 Ω calibrated against one standard, by
// sharing, by coefficients of 1, and as if they were independent.
func resistorsInSeries(t testing.TB) quantities {
	shared, total := resistors(same)
	independent, wrong := resistors(fresh)
	m := new(Model)
	ones := mat.NewSymDense(10, nil)
	var each []Node
	for i := range 10 {
		each = append(each, add(m, strconv.Itoa(i), Normal{Mu: 1000, Sigma: 0.1}))
		for j := range 10 {
			ones.SetSym(i, j, 1)
		}
	}
	require.NoError(t, m.Correlate(each, ones))
	return exactly(map[string]float64{
		"u/Ω shared": standardUncertainty(t, shared, total), "u/Ω with coefficients": standardUncertainty(t, m, m.Add(each[0], each[1:]...)),
		"u/Ω independent": standardUncertainty(t, independent, wrong),
	})
}

// calibratedTogether: R_i = α_i R_S with a common standard R_S.
func calibratedTogether(t testing.TB) quantities {
	f := make(quantities)
	for name, u := range map[string]float64{"100e-6": 100e-6, "10e-6": 10e-6, "1e-6": 1e-6} {
		m := new(Model)
		standard := add(m, "R_S", Normal{Mu: 1, Sigma: 1e-4})
		j, err := m.PropagateJointly(m.Multiply(standard, add(m, "α_1", Normal{Mu: 1, Sigma: u})), m.Multiply(standard, add(m, "α_2", Normal{Mu: 1, Sigma: u})))
		require.NoError(t, err)
		f["r for u(α) "+name] = figure{value: j.Correlation(0, 1)}
	}
	return f
}

// cosineError is δ = β²/2 for a rectangle ±0.1, whose terms of second order are
// the whole of it.
func cosineError(t testing.TB) quantities {
	m := new(Model)
	beta := add(m, "β", PlusMinus(0.1))
	delta := m.Divide(m.Multiply(beta, beta), m.Constant(2))
	s := secondOrder(t, m, delta)
	mc := simulate(t, m, delta, Settings{Trials: trials, Seed: 17})
	return exactly(map[string]float64{"E": s.Shift, "variance": s.Variance, "SD": s.StandardUncertainty}).with(meanAndSD(&mc).prefixed("simulated "))
}
