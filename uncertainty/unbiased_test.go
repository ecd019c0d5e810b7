package uncertainty

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distuv"

	"minim/uncertainty/near"
	"minim/uncertainty/portable"
	"minim/uncertainty/statistics"
)

// known exactly is a model whose distribution function is known by quadrature, over all but one of its quantities.
type knownExactly struct {
	build func(m *Model) Node
	below func(q float64) float64
}

// over is the mean of a function over a rectangular quantity.
func over(d Rectangular, f func(x float64) float64) float64 {
	return quad.Fixed(f, d.Low, d.High, 120, nil, 0) / (d.High - d.Low)
}

// exactModels are hard each in its own way; what they come to is constructed, by the distribution functions of gonum.
func exactModels(t *testing.T) map[string]knownExactly {
	phi := distuv.UnitNormal.CDF
	models := map[string]knownExactly{
		"a mass that may be nothing": {func(m *Model) Node {
			return m.Divide(m.Add(add(m, "scatter", Normal{Mu: 0.01, Sigma: 0.01}), add(m, "rounding", PlusMinus(0.005))), add(m, "volume", Rectangular{Low: 48, High: 52}))
		}, func(q float64) float64 {
			return over(Rectangular{Low: 48, High: 52}, func(v float64) float64 {
				return over(PlusMinus(0.005), func(r float64) float64 { return phi((q*v - r - 0.01) / 0.01) })
			})
		}},
		"correlated, in numerator and divisor": {func(m *Model) Node {
			a, b := add(m, "a", Normal{Mu: 1, Sigma: 0.03}), add(m, "b", Normal{Mu: 1, Sigma: 0.03})
			require.NoError(t, m.Correlate([]Node{a, b}, mat.NewSymDense(2, []float64{1, 0.9, 0.9, 1})))
			return m.Divide(m.Divide(a, b), add(m, "volume", Rectangular{Low: 0.9, High: 1.1}))
		}, func(q float64) float64 { // a - q v b is normal
			return over(Rectangular{Low: 0.9, High: 1.1}, func(v float64) float64 { return phi((q*v - 1) / 0.03 / math.Sqrt(1+q*v*q*v-1.8*q*v)) })
		}},
		"an influence in two nodes": {func(m *Model) Node {
			x, one := add(m, "x", PlusMinus(0.05)), m.Constant(1)
			return m.Divide(m.Multiply(m.Add(one, x), add(m, "v", Normal{Mu: 1, Sigma: 0.02})), m.Add(one, m.Multiply(x, add(m, "w", Rectangular{Low: 0.28, High: 0.32}))))
		}, func(q float64) float64 {
			return over(PlusMinus(0.05), func(x float64) float64 {
				return over(Rectangular{Low: 0.28, High: 0.32}, func(w float64) float64 { return phi((q*(1+x*w)/(1+x) - 1) / 0.02) })
			})
		}},
		"one vessel filled three times, of zero width another": {func(m *Model) Node {
			v := add(m, "v", Rectangular{Low: 0.9, High: 1.1})
			y := m.Divide(m.Divide(add(m, "x", Normal{Mu: 1, Sigma: 0.05}), v), m.Multiply(v, add(m, "flask", Normal{Mu: 2, Sigma: 0})))
			return m.Divide(m.Add(y, add(m, "nothing", Rectangular{Low: 0, High: 0})), v)
		}, func(q float64) float64 {
			return over(Rectangular{Low: 0.9, High: 1.1}, func(v float64) float64 { return phi((2*q*v*v*v - 1) / 0.05) })
		}},
		"wide factors": {func(m *Model) Node {
			y := m.Multiply(add(m, "x", Normal{Mu: 1, Sigma: 0.04}), add(m, "aliquot", Rectangular{Low: 0.9, High: 1.1}))
			return m.Divide(y, m.Multiply(add(m, "flask", Rectangular{Low: 0.88, High: 1.12}), add(m, "other flask", Normal{Mu: 1, Sigma: 0.03})))
		}, func(q float64) float64 {
			return over(Rectangular{Low: 0.9, High: 1.1}, func(a float64) float64 {
				return over(Rectangular{Low: 0.88, High: 1.12}, func(f float64) float64 { // x a - q f o is normal
					k := q * f / a
					return phi((k - 1) / math.Hypot(0.04, 0.03*k))
				})
			})
		}},
	}
	for _, nu := range []float64{1, 2, 3} {
		of := distuv.StudentsT{Sigma: 1, Nu: nu}
		models[fmt.Sprintf("t with ν = %v times a rectangle", nu)] = knownExactly{func(m *Model) Node {
			return m.Multiply(add(m, "x", StudentT{Mu: 1, Sigma: 0.01, Nu: nu}), add(m, "assay", Rectangular{Low: 0.995, High: 1.005}))
		}, func(q float64) float64 {
			return over(Rectangular{Low: 0.995, High: 1.005}, func(a float64) float64 { return of.CDF((q/a - 1) / 0.01) })
		}}
	}
	for _, c := range []struct{ mass, volume float64 }{{0.03, 0.03}, {0.05, 0.01}, {0.01, 0.05}, {0.1, 0.12}} {
		mass, volume := Rectangular{Low: 1 - c.mass, High: 1 + c.mass}, Rectangular{Low: 1 - c.volume, High: 1 + c.volume}
		models[fmt.Sprintf("rectangle of %v over one of %v", c.mass, c.volume)] = knownExactly{func(m *Model) Node {
			return m.Divide(add(m, "mass", mass), add(m, "volume", volume))
		}, func(q float64) float64 {
			return quad.Fixed(func(v float64) float64 {
				return max(0, min((q*v-mass.Low)/(2*c.mass), 1))
			}, volume.Low, volume.High, 4000, nil, 0) / (2 * c.volume)
		}}
	}
	return models
}

// TestUnbiased: in the mean of some seeds the ends of few trials are those of quadrature, as near as their standard errors say
// and to 0.0005 u, where a regression in the place of the mean difference is wrong by more than ten times that; to 0.001 u
// where one t-distribution with one degree of freedom leaves more open. A quarter of the interval stands for u, which not all
// have.
func TestUnbiased(t *testing.T) {
	skipUnderRace(t)
	for name, c := range exactModels(t) {
		m := new(Model)
		y := c.build(m)
		quantile := func(p float64) float64 { return portable.Bisect(-1, 3, func(q float64) bool { return c.below(q) < p }) }
		exact := [2]float64{quantile(0.025), quantile(0.975)}
		u := inPlaceOfDeviation(exact[0], exact[1])
		var off, err [2]float64
		seeds := 0.0
		for ; seeds < 12 || seeds < 40 && 4*max(err[0], err[1])/seeds/math.Sqrt(seeds) > 0.00045; seeds++ {
			mc := simulate(t, m, y, Settings{Trials: fewestTrials, Seed: uint64(seeds)})
			assert.Greater(t, mc.Sharper, 4.0, name)
			for end, e := range []statistics.Estimate{{Value: mc.Lower, Err: mc.LowerError}, {Value: mc.Upper, Err: mc.UpperError}} {
				off[end] += (e.Value - exact[end]) / u
				err[end] += e.Err / u
			}
		}
		for end := range off {
			near.Absolute(t, fmt.Sprintf("%s, end %d, over u", name, end), 0, off[end]/seeds, 5e-5+4*err[end]/seeds/math.Sqrt(seeds))
			assert.Less(t, 4*err[end]/seeds/math.Sqrt(seeds), 0.00095, "%s: what is left open", name)
		}
	}
}

// TestFallsBack: JCGM 101, 9.3 and 9.4, where the linear part says little of the output or nothing: the ends have the
// standard errors of sorted trials, or less where it says something, and these are those of the scatter over 50 seeds. The
// ends themselves are those of 10^7 trials in numpy (testdata/independent) or of 10^6 sorted ones.
func TestFallsBack(t *testing.T) {
	skipUnderRace(t)
	for _, c := range []struct {
		name         string
		build        func() (*Model, Node)
		lower, upper statistics.Estimate
	}{
		{"9.3", func() (*Model, Node) {
			m := new(Model)
			return m, weightOf(m).approximate(m)
		}, statistics.Estimate{Value: 1.084406, Err: 6.8e-5}, statistics.Estimate{Value: 1.383632, Err: 6.8e-5}},
		{"9.3, model (23)", func() (*Model, Node) {
			m := new(Model)
			return m, weightOf(m).full(m)
		}, statistics.Estimate{Value: 1.084376, Err: 6.7e-5}, statistics.Estimate{Value: 1.383597, Err: 6.7e-5}},
		{"9.4, r = 0, x1 = 0", func() (*Model, Node) { return comparisonLoss(t, 0, 0) }, statistics.Estimate{Value: 1.2658904, Err: 0}, statistics.Estimate{Value: 184.44397, Err: 0}},
		{"9.4, r = 0, x1 = 0.010", func() (*Model, Node) { return comparisonLoss(t, 0.010, 0) }, statistics.Estimate{}, statistics.Estimate{}},
		{"9.4, r = 0, x1 = 0.050", func() (*Model, Node) { return comparisonLoss(t, 0.050, 0) }, statistics.Estimate{}, statistics.Estimate{}},
		{"9.4, r = 0.9, x1 = 0", func() (*Model, Node) { return comparisonLoss(t, 0, 0.9) }, statistics.Estimate{}, statistics.Estimate{}},
		{"9.4, r = 0.9, x1 = 0.010", func() (*Model, Node) { return comparisonLoss(t, 0.010, 0.9) }, statistics.Estimate{}, statistics.Estimate{}},
		{"9.4, r = 0.9, x1 = 0.050", func() (*Model, Node) { return comparisonLoss(t, 0.050, 0.9) }, statistics.Estimate{}, statistics.Estimate{}},
	} {
		m, y := c.build()
		if c.lower.Value == 0 {
			long := simulate(t, m, y, Settings{Trials: trials, Seed: 7, Plain: true})
			c.lower, c.upper = statistics.Estimate{Value: long.Lower, Err: long.LowerError}, statistics.Estimate{Value: long.Upper, Err: long.UpperError}
		}
		var ends [2][]float64
		var squares, plain [2]float64
		const seeds = 50
		for seed := range uint64(seeds) {
			mc := simulate(t, m, y, Settings{Trials: fewestTrials, Seed: seed})
			sorted := simulate(t, m, y, Settings{Trials: fewestTrials, Seed: seed, Plain: true})
			for end, e := range []statistics.Estimate{{Value: mc.Lower, Err: mc.LowerError}, {Value: mc.Upper, Err: mc.UpperError}} {
				ends[end] = append(ends[end], e.Value)
				squares[end] += e.Err * e.Err / seeds
				by := []float64{sorted.LowerError, sorted.UpperError}[end]
				plain[end] += by * by / seeds
			}
		}
		for end, want := range []statistics.Estimate{c.lower, c.upper} {
			mean, scatter, _ := Readings(ends[end])
			stated := math.Sqrt(squares[end])
			near.Absolute(t, fmt.Sprintf("%s, end %d", c.name, end), want.Value, mean, 4.5*math.Hypot(want.Err, stated/math.Sqrt(seeds)))
			assert.True(t, 0.67 < stated/scatter && stated/scatter < 1.5, "%s, end %d: stated over scatter is %v", c.name, end, stated/scatter)
			assert.LessOrEqual(t, stated, 1.1*math.Sqrt(plain[end]), "%s, end %d: no less sure than sorted trials", c.name, end)
		}
	}
}
