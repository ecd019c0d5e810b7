package uncertainty

import (
	"fmt"
	"math"
	"math/rand/v2"
	"runtime"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distuv"

	"minim/uncertainty/near"
	"minim/uncertainty/portable"
	"minim/uncertainty/random"
	"minim/uncertainty/rounding"
	"minim/uncertainty/sharp"
)

// The distribution functions of what stands in tests alone.
func (d Trapezoidal) Below() func(float64) float64 {
	switch d.Beta {
	case 0:
		return distuv.NewTriangle(d.Low, d.High, portable.Middle(d.Low, d.High), nil).CDF
	case 1:
		return distuv.Uniform{Min: d.Low, Max: d.High}.CDF
	}
	return cutTriangle(d).CDF
}

func (d Arcsine) Below() func(float64) float64 {
	return stretched{distuv.Beta{Alpha: 0.5, Beta: 0.5}, d.Low, d.High - d.Low}.CDF
}

func (d InexactRectangular) Below() func(float64) float64 {
	if d.D == 0 {
		return distuv.Uniform{Min: d.Low, Max: d.High}.CDF
	}
	return func(x float64) float64 {
		s := d.Summary()
		switch {
		case x <= s.Low:
			return 0
		case x >= s.High:
			return 1
		}
		return inexact(d).CDF(x)
	}
}

// TestLinearLawOfRandomModels: the law of the linear part beside 10^6 draws of it, within 5
// standard errors. What is cut off is put back there.
func TestLinearLawOfRandomModels(t *testing.T) {
	skipUnderRace(t)
	const draws = 1_000_000
	source := rand.New(rand.NewPCG(21, 22))
	for range 4 {
		m, out := randomModel(t, source)
		slopes := m.gradient(out, m.values(out, mean))
		l := m.linearPart(slopes, 0.95)
		w := m.compile(out, slopes).newWorker(5)
		var values []float64
		for b := range draws / random.BlockSize {
			_, linear := w.run(b)
			values = append(values, linear...)
		}
		slices.Sort(values)
		for _, p := range []float64{0.001, 0.025, 0.2, 0.5, 0.8, 0.975, 0.999} {
			off := l.Law.Below(values[int(p*float64(len(values)))]) - p
			near.Absolute(t, fmt.Sprintf("%d influences, below %v", len(slopes), p), 0, off/math.Sqrt(p*(1-p)/float64(len(values))), 5)
		}
	}
}

// TestDistributionFunctionsAreInverse: what the law is made of, and the quantiles.
func TestDistributionFunctionsAreInverse(t *testing.T) {
	for _, c := range distributions {
		d, is := c.d.(cumulative)
		if !is {
			continue
		}
		below := d.Below()
		for _, p := range []float64{0.001, 0.03, 0.4, 0.77, 0.999} {
			near.Absolute(t, fmt.Sprintf("%T below its quantile", c.d), p, below(quantileOf(c.d, p)), 1e-6)
		}
		low, high := support(c.d)
		assert.Equal(t, []float64{0, 1}, []float64{below(low - 1), below(high + 1)}, "%T", c.d)
	}
}

// TestKernelsOfGamma: the tables of what takes long, beside the distribution function itself.
func TestKernelsOfGamma(t *testing.T) {
	for _, d := range []Distribution{Gamma{Mu: 1, Sigma: 0.1}, Gamma{Mu: 1, Sigma: 0.7}, Gamma{Mu: 1, Sigma: 1.6}, GammaBelow(0.4, 0.6, 2), GammaBelow(0.1, 0.05, 0.1)} {
		m := new(Model)
		add(m, "x", d)
		s := &sharp.Sharpening{Linear: &sharp.Linear{Slopes: []float64{1}}}
		assert.True(t, m.smoothInfluence(s, 0, 0))
		for _, p := range []float64{1e-4, 0.01, 0.1, 0.3, 0.5, 0.9, 0.99, 0.99999} {
			at := []float64{(quantileOf(d, p) - s.Mean) / s.Size}
			s.Kernel.Below(at, nil)
			near.Absolute(t, fmt.Sprintf("%#v below its quantile", d), p, at[0], 1e-7)
		}
	}
}

// sharpened simulates with few trials and demands that they are sharpened.
func sharpened(t *testing.T, what string, m *Model, y Node, seed uint64) MonteCarlo {
	t.Helper()
	mc := simulate(t, m, y, Settings{Trials: fewestTrials, Seed: seed})
	assert.Greater(t, mc.Sharper, 1.0, what)
	return mc
}

// TestAdditiveModelsAreExact: JCGM 101, 9.2.2 to 9.2.4: with no more than 10^4 trials no figure
// of a sum scatters any more. The exact ends of 9.2.3 follow from (y + 2√12)^4/24 in units of the
// width √12; those of 9.2.4 by quadrature of that over the wide rectangle.
func TestAdditiveModelsAreExact(t *testing.T) {
	one, wide := PlusMinus(math.Sqrt(3)), PlusMinus(10*math.Sqrt(3))
	four := math.Sqrt(12) * (math.Pow(0.025*24, 0.25) - 2)
	for _, c := range []struct {
		name   string
		fourth Distribution
		of     Distribution
		lower  float64
	}{
		{"9.2.2", Normal{Mu: 0, Sigma: 1}, Normal{Mu: 0, Sigma: 1}, -2 * 1.959963984540054},
		{"9.2.3", one, one, four},
		{"9.2.4", wide, one, -17.0 + 0.0158},
	} {
		m, y := sumOf(c.of, c.of, c.of, c.fourth)
		if c.name == "9.2.4" {
			c.lower = withWideRectangle(0.025)
		}
		for seed := range uint64(3) {
			mc := sharpened(t, c.name, m, y, seed)
			near.Absolute(t, c.name+", lower", c.lower, mc.Lower, 1e-5)
			near.Absolute(t, c.name+", upper", -c.lower, mc.Upper, 1e-5)
			near.Absolute(t, c.name+", chance", 0.95, mc.ConformanceProbability(Limits{c.lower, -c.lower}), 1e-6)
			near.Absolute(t, c.name+", within", -c.lower, mc.Within(0, 0.95), 1e-3)
			near.Absolute(t, c.name+", length of the shortest", -2*c.lower, mc.ShortestUpper-mc.ShortestLower, 1e-3)
		}
	}
}

// withWideRectangle is a quantile of 9.2.4: the distribution of the sum of three rectangles, of
// piecewise cubics, averaged over the fourth.
func withWideRectangle(p float64) float64 {
	w := math.Sqrt(12)
	three := func(x float64) float64 { // the distribution function of three
		z, sum := x/w+1.5, 0.0
		for k, c := range []float64{1, -3, 3, -1} {
			sum += c * math.Pow(max(0, z-float64(k)), 3) / 6
		}
		return min(sum, 1)
	}
	below := func(y float64) float64 {
		sum := 0.0
		const pieces = 400
		for i := range pieces {
			from := 10 * math.Sqrt(3) * (2*float64(i)/pieces - 1)
			sum += quad.Fixed(func(x float64) float64 { return three(y - x) }, from, from+20*math.Sqrt(3)/pieces, 4, nil, 0)
		}
		return sum / (20 * math.Sqrt(3))
	}
	return portable.Bisect(-25, 25, func(y float64) bool { return below(y) < p })
}

// TestNotSharper: JCGM 101, 9.3 and 9.4: where the linear part says next to nothing of the output,
// the ends have the standard error of sorted trials, or a little less.
func TestNotSharper(t *testing.T) {
	for _, r := range []float64{0, 0.9} {
		m, y := comparisonLoss(t, 0, r)
		mc := simulate(t, m, y, Settings{Trials: fewestTrials, Seed: 3})
		assert.Equal(t, 1.0, mc.Sharper, "x1 = 0, r = %v", r)
		plain := simulate(t, m, y, Settings{Trials: fewestTrials, Seed: 3, Plain: true})
		assert.Equal(t, plain.Lower, mc.Lower)
		assert.Equal(t, plain.ShortestUpper, mc.ShortestUpper)
	}
}

// TestScatterOfSharpened holds the standard errors of the ends and of a chance against their
// scatter over seeds, for models of all kinds.
func TestScatterOfSharpened(t *testing.T) {
	skipUnderRace(t)
	const seeds = 50
	for name, build := range sharpModels(t) {
		m, y := build()
		a := propagate(t, m, y, 0.95)
		limits := Limits{a.Value - a.StandardUncertainty, a.Value + 2*a.StandardUncertainty}
		var values, stated [3][]float64
		for seed := range uint64(seeds) {
			mc := sharpened(t, name, m, y, seed)
			for i, x := range []float64{mc.Lower, mc.Upper, mc.ConformanceProbability(limits)} {
				values[i] = append(values[i], x)
				stated[i] = append(stated[i], []float64{mc.LowerError, mc.UpperError, mc.ChanceError(limits)}[i])
			}
		}
		long := simulate(t, m, y, Settings{Trials: 1_000_000, Seed: 99})
		exact := []float64{long.Lower, long.Upper, long.ConformanceProbability(limits)}
		errors := []float64{long.LowerError, long.UpperError, long.ChanceError(limits)}
		for i, what := range []string{"lower", "upper", "chance"} {
			mean, scatter, _ := Readings(values[i])
			squares := 0.0
			for _, e := range stated[i] {
				squares += e * e / seeds
			}
			ratio := math.Sqrt(squares) / scatter
			asTable := []float64{1e-5 * a.StandardUncertainty, 1e-5 * a.StandardUncertainty, 1e-5}[i] // what the table of a law is off by
			assert.True(t, 0.67 < ratio && ratio < 1.5 || scatter < asTable, "%s, %s: stated over scatter is %v", name, what, ratio)
			z := (mean - exact[i]) / math.Hypot(errors[i], scatter/math.Sqrt(seeds))
			near.Absolute(t, name+", "+what+", off in standard errors", 0, z, 4.5)
		}
	}
}

// sharpModels are of all kinds, with what makes each hard.
func sharpModels(t *testing.T) map[string]func() (*Model, Node) {
	set := Set{Owner: Owner{Name: "pipette"}, At: 1}
	models := map[string]func() (*Model, Node){
		"dilutions": dilutionModel,
		"a mass that may be nothing": func() (*Model, Node) {
			m := new(Model)
			return m, m.Divide(m.Add(add(m, "scatter", Normal{Mu: 0.01, Sigma: 0.01}), add(m, "rounding", PlusMinus(0.005))), add(m, "volume", Rectangular{Low: 48, High: 52}))
		},
		"an influence in two nodes": func() (*Model, Node) {
			m := new(Model)
			x := add(m, "x", PlusMinus(0.2))
			one := m.Constant(1)
			return m, m.Divide(m.Multiply(m.Add(one, x), add(m, "v", Normal{Mu: 1, Sigma: 0.02})), m.Add(one, m.Multiply(x, add(m, "w", Rectangular{Low: 0.2, High: 0.4}))))
		},
		"a square": func() (*Model, Node) {
			m := new(Model)
			x := add(m, "x", Normal{Mu: 2, Sigma: 0.1})
			return m, m.Multiply(m.Multiply(x, x), add(m, "v", PlusMinus(0.05)))
		},
		"correlated, and zero widths": func() (*Model, Node) {
			m := new(Model)
			a, b := add(m, "a", Normal{Mu: 3, Sigma: 0.1}), add(m, "b", Normal{Mu: 2, Sigma: 0.2})
			if err := m.Correlate([]Node{a, b}, mat.NewSymDense(2, []float64{1, -0.6, -0.6, 1})); err != nil {
				t.Fatal(err)
			}
			y := m.Add(m.Multiply(a, b), add(m, "none", Normal{Mu: 1, Sigma: 0}), add(m, "nothing", Rectangular{Low: 1, High: 1}))
			return m, m.Divide(y, add(m, "volume", Rectangular{Low: 0.9, High: 1.1}))
		},
		"what is gamma, what is cut off, what was measured": func() (*Model, Node) {
			m := new(Model)
			tabulated := Prior{Of: PlusMinus(0.1)}.Given(Measured{Mean: 0.05, Scale: 0.04, Nu: 3})
			y := m.Add(m.Constant(1), add(m, "film", Gamma{Mu: 0.05, Sigma: 0.04}), add(m, "below", GammaBelow(0.05, 0.05, 0.08)), add(m, "bias", tabulated))
			return m, m.Divide(y, m.Add(m.Constant(1), add(m, "volume", tabulated)))
		},
	}
	for name, limit := range map[string]float64{"that says little": 0.1, "that says much": 0.008, "of which both": 0.02} {
		models["a posterior with its uses, of a limit "+name] = func() (*Model, Node) {
			m := new(Model)
			told := Prior{Of: PlusMinus(limit)}.Given(Measured{Mean: 0.004, Scale: 0.01, Nu: 4, OfSet: true})
			e := m.Influence(Influence{Code: "error", Owner: set.Owner, Distribution: told, DegreesOfFreedom: 4, Set: set})
			one := m.Constant(1)
			y := m.Multiply(m.Add(ofReadings(m, "first", 1, 0.02, 5, set), e), add(m, "assay", Rectangular{Low: 0.98, High: 1}))
			return m, m.Divide(y, m.Add(one, m.Multiply(m.Constant(0.3), e), add(m, "flask", Peaked(0.01))))
		}
	}
	for n := 3; n <= 5; n++ {
		models[fmt.Sprint("uses of ", n, " readings, one in a divisor")] = func() (*Model, Node) {
			m := new(Model)
			nu := float64(n - 1)
			divisor := m.Influence(Influence{Code: "flask", Distribution: StudentT{Mu: 0, Sigma: 0.01, Nu: nu}, DegreesOfFreedom: nu, Set: Set{Owner: Owner{Name: "flask"}}, Most: 0.5})
			y := m.Multiply(ofReadings(m, "first", 1, 0.01, n, set), ofReadings(m, "second", 1, 0.02, n, set))
			return m, m.Divide(m.Multiply(y, add(m, "assay", Rectangular{Low: 0.98, High: 1})), m.Add(m.Constant(1), divisor))
		}
	}
	return models
}

// TestHeavyTails: two readings, of which a product has no mean, beside sorted trials.
func TestHeavyTails(t *testing.T) {
	skipUnderRace(t)
	m, set := new(Model), Set{Owner: Owner{Name: "pipette"}, At: 1}
	y := m.Multiply(ofReadings(m, "first", 1, 0.01, 2, set), ofReadings(m, "second", 1, 0.02, 2, set))
	y = m.Divide(y, add(m, "volume", Rectangular{Low: 0.99, High: 1.01}))
	long := simulate(t, m, y, Settings{Trials: 1_000_000, Seed: 4})
	for seed := range uint64(5) {
		mc := sharpened(t, "two readings", m, y, seed)
		near.Absolute(t, "lower", long.Lower, mc.Lower, 5*math.Hypot(mc.LowerError, long.LowerError))
		near.Absolute(t, "upper", long.Upper, mc.Upper, 5*math.Hypot(mc.UpperError, long.UpperError))
		assert.Greater(t, mc.Sharper, 4.0)
	}
}

// TestSharpenedOnProcessors: no digit depends on their number.
func TestSharpenedOnProcessors(t *testing.T) {
	run := func(n int) MonteCarlo {
		defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(n))
		m, y := dilutionModel()
		return sharpened(t, fmt.Sprint(n, " processors"), m, y, 8)
	}
	one := run(1)
	for _, n := range []int{2, 8} {
		assert.Equal(t, true, sameRun(one, run(n)), "%d processors", n)
	}
}

// TestMeansAreThoseOfPlainTrials: what makes ends sharper touches no mean and no standard deviation.
func TestMeansAreThoseOfPlainTrials(t *testing.T) {
	m, y := dilutionModel()
	sharp, plain := simulate(t, m, y, Settings{Trials: 20_000}), simulate(t, m, y, Settings{Trials: 20_000, Plain: true})
	assert.Equal(t, []float64{plain.Mean, plain.StandardDeviation, plain.MeanError, plain.DeviationError}, []float64{sharp.Mean, sharp.StandardDeviation, sharp.MeanError, sharp.DeviationError})
	assert.Equal(t, 1.0, plain.Sharper)
	near.Absolute(t, "lower", plain.Lower, sharp.Lower, 5*plain.LowerError)
}

// TestQuantilesOfSharpened: the whole distribution, also when only its curve is kept, beside
// sorted trials.
func TestQuantilesOfSharpened(t *testing.T) {
	skipUnderRace(t)
	m, y := dilutionModel()
	plain := simulate(t, m, y, Settings{Trials: 1_000_000})
	mc := sharpened(t, "dilutions", m, y, 3)
	u := mc.StandardDeviation
	limits := Limits{mc.Mean - u, mc.Mean + u}
	before := mc.ConformanceProbability(limits)
	for _, thin := range []bool{false, true} {
		if thin {
			require.NoError(t, mc.Thin(t.Context(), 2000))
		}
		for _, p := range []float64{0.001, 0.01, 0.2, 0.5, 0.7, 0.99, 0.999} {
			near.Absolute(t, fmt.Sprint("quantile ", p), plain.Quantile(p), mc.Quantile(p), 0.02*u)
		}
		near.Absolute(t, "chance", before, mc.ConformanceProbability(limits), 3e-4)
		near.Absolute(t, "half", plain.Within(mc.Mean, 0.9), mc.Within(mc.Mean, 0.9), 0.01*u)
	}
}

// TestEnough: as many trials as it takes, no more than are asked for, and as sure as is said.
func TestEnough(t *testing.T) {
	m, y := dilutionModel()
	limits := []Limits{{0, propagate(t, m, y, 0.95).Value}}
	mc := simulate(t, m, y, Settings{Printed: limits})
	assert.Equal(t, fewestTrials, mc.Trials)
	assert.Equal(t, simulate(t, m, y, Settings{Trials: fewestTrials}).Lower, mc.Lower, "as when they are asked for")
	assert.LessOrEqual(t, mc.ChanceError(limits[0]), printedChance)
	assert.False(t, mc.AtCeiling)

	m, y = comparisonLoss(t, 0.01, 0)
	mc = simulate(t, m, y, Settings{})
	assert.Greater(t, mc.Trials, sharp.MostTrials)
	assert.LessOrEqual(t, max(mc.LowerError, mc.UpperError), 0.2*rounding.LastDigit((mc.Upper-mc.Lower)/2))
	mc = simulate(t, m, y, Settings{Trials: 20_000, Enough: true})
	assert.Equal(t, 20_000, mc.Trials)
	assert.True(t, mc.AtCeiling)
}
