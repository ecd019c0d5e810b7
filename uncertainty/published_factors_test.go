package uncertainty

import (
	"fmt"
	"math"
	"strconv"
	"testing"

	"minim/uncertainty/near"
	"minim/uncertainty/random"
)

// tableG2 is JCGM 100, table G.2: the columns 68.27, 95.45 and 99.73 % are the
// probabilities of ±1, ±2 and ±3 standard deviations of a normal distribution.
func tableG2(testing.TB) quantities {
	f := make(quantities)
	degrees := []float64{25, 30, 35, 40, 45, 50, 100, infinity}
	for nu := 1.0; nu <= 20; nu++ {
		degrees = append(degrees, nu)
	}
	for percent, p := range columnsG2() {
		for _, nu := range degrees {
			f[fmt.Sprintf("ν %v, %s %%", nu, percent)] = figure{value: CoverageFactor(p, nu)}
		}
	}
	return f
}

func columnsG2() map[string]float64 {
	return map[string]float64{"68.27": sigmas(1), "90": 0.90, "95": 0.95, "95.45": sigmas(2), "99": 0.99, "99.73": sigmas(3)}
}

// productOfMeans is Y = b X1 X2 X3 of means of 10, 5 and 15 readings.
func productOfMeans(t testing.TB) quantities {
	m := new(Model)
	y := m.Constant(3)
	for i, x := range []struct{ relative, n float64 }{{0.25, 10}, {0.57, 5}, {0.82, 15}} {
		y = m.Multiply(y, known(m, strconv.Itoa(i), Normal{Mu: 2, Sigma: 2 * x.relative / 100}, x.n-1))
	}
	a := propagate(t, m, y, 0.95)
	relative := 100 * a.StandardUncertainty / a.Value
	return exactly(map[string]float64{
		"u/%": relative, "ν_eff": a.DegreesOfFreedom, "t95 for 19": CoverageFactor(0.95, 19), "U95 for 19/%": relative * CoverageFactor(0.95, 19),
		"t95 for the truncated ν": CoverageFactor(0.95, math.Floor(a.DegreesOfFreedom)), "t95 for ν_eff": a.CoverageFactor,
	})
}

// threeRectangles: half-widths of the central intervals, in standard deviations.
func threeRectangles(t testing.TB) quantities {
	m, y := sumOf(PlusMinus(1), PlusMinus(1), PlusMinus(1))
	a := propagate(t, m, y, 0.95)
	mc := simulate(t, m, y, Settings{Trials: trials, Seed: 18})
	f := quantities{"95 %": quantile(&mc, 0.975), "99 %": quantile(&mc, 0.995)}
	return f.times(1 / a.StandardUncertainty)
}

// rectangleCoverage: factors of a rectangle, and the chance of being within ±u.
func rectangleCoverage(t testing.TB) quantities {
	d := PlusMinus(1)
	u := d.Summary().StandardUncertainty
	m, y := sumOf(d)
	mc := simulate(t, m, y, Settings{Trials: trials, Seed: 19})
	p := mc.ConformanceProbability(Limits{-u, u})
	_, high := support(d)
	f := exactly(map[string]float64{"k95": quantileOf(d, 0.975) / u, "k99": quantileOf(d, 0.995) / u, "k100": high / u})
	f["p/% for k = 1"] = figure{100 * p, 100 * math.Sqrt(p*(1-p)/float64(mc.Trials))}
	return f
}

func normalCoverage(t testing.TB) quantities {
	m, y := sumOf(Normal{Mu: 0, Sigma: 1})
	f := make(quantities)
	for name, k := range map[string]float64{"√3": math.Sqrt(3), "2": 2, "3": 3} {
		p := propagate(t, m, y, 0.95).ConformanceProbability(Limits{-k, k})
		f["p/% for k = "+name] = figure{value: 100 * p}
		near.Relative(t, "k for p", k, CoverageFactor(p, infinity), 1e-12)
	}
	return f
}

// spreadOfReadings is the standard deviation of s over its mean, in per cent,
// for sets of n normal readings.
func spreadOfReadings(testing.TB) quantities {
	const sets = 20_000
	f := make(quantities)
	for _, n := range []int{2, 3, 4, 5, 10, 20, 30, 50} {
		draws := new(random.Source)
		draws.Key(20, uint64(n), 0)
		values, deviations := make([]float64, n), make([]float64, sets)
		for i := range deviations {
			Normal{Mu: 0, Sigma: 1}.Fill(values, draws)
			_, deviations[i], _ = Readings(values)
		}
		mean, s, _ := Readings(deviations)
		// Variance of a ratio of SD and mean, where the kurtosis of s is 3.9 at the most.
		relative := s / mean
		f["n "+strconv.Itoa(n)] = figure{100 * relative, 100 * relative * math.Sqrt((2.9/4+relative*relative)/sets)}
	}
	return f
}
