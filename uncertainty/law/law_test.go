package law

import (
	"fmt"
	"math"
	"math/cmplx"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"gonum.org/v1/gonum/stat/distuv"

	"minim/uncertainty/near"
	"minim/uncertainty/portable"
)

// TestTransform holds the transforms against their sums, term by term.
func TestTransform(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	const n = 32
	x, y := make([]float64, n), make([]complex128, n)
	for i := range x {
		x[i] = random.NormFloat64()
		y[i] = complex(x[i], random.NormFloat64())
	}
	sum := func(j int, y func(k int) complex128) (sum complex128) {
		for k := range n {
			sum += y(k) * cmplx.Exp(complex(0, 2*math.Pi*float64(j*k)/n))
		}
		return sum
	}
	all := slices.Clone(y)
	transform(all)
	half := spectrum(x, make([]complex128, len(x)/2), make([]complex128, len(x)/2+1))
	for j := range n {
		near.Absolute(t, "transform", 0, cmplx.Abs(all[j]-sum(j, func(k int) complex128 { return y[k] })), 1e-13)
		if j <= n/2 {
			near.Absolute(t, "spectrum", 0, cmplx.Abs(half[j]-sum(j, func(k int) complex128 { return complex(x[k], 0) })), 1e-13)
		}
	}
	// The spectrum of real numbers, back.
	for j := range half {
		half[j] = cmplx.Conj(half[j])
	}
	for j, back := range realSeries(half) {
		near.Absolute(t, "real series", x[j]*n, back, 1e-12)
	}
}

// TestNormalLaw: the law of normal quantities is normal, to the digits that the cells have.
func TestNormalLaw(t *testing.T) {
	s := new(Sum)
	s.Normal(3)
	s.Normal(-4)
	l := s.Law()
	assert.Equal(t, 5.0, s.Scale())
	for z := -4.0; z < 4; z += 0.0371 {
		near.Absolute(t, fmt.Sprint("below ", z), portable.NormalCDF(z), l.Below(5*z), 3e-8)
	}
	for _, p := range []float64{1e-4, 0.025, 0.3, 0.5, 0.975, 0.9999} {
		near.Absolute(t, fmt.Sprint("quantile ", p), portable.NormalQuantile(p), l.At(p)/5, 2e-6)
	}
	assert.Equal(t, []float64{0, 1}, []float64{l.Below(-101), l.Below(101)})
}

// TestSumOfUniforms: the sum of four equal rectangles, near its ends 1/24 of the fourth power
// (JCGM 101, 9.2.3.3, as a closed form), and that of one.
func TestSumOfUniforms(t *testing.T) {
	s, one := new(Sum), new(Sum)
	for range 4 {
		s.Flat(0.5)
	}
	one.Flat(1)
	four, single := s.Law(), one.Law()
	for _, x := range []float64{0.1, 0.4, 0.7, 0.9} {
		near.Absolute(t, fmt.Sprint("four at ", x), math.Pow(x, 4)/24, four.Below(x-2), 1e-8)
		near.Absolute(t, fmt.Sprint("four beyond ", x), 1-math.Pow(x, 4)/24, four.Below(2-x), 1e-8)
		near.Absolute(t, fmt.Sprint("one at ", x), x, single.Below(2*x-1), 3e-5)
	}
}

// TestGammaLaw: a gamma quantity, as it is and mirrored, beside that of gonum.
func TestGammaLaw(t *testing.T) {
	for _, shape := range []float64{1.5, 4, 300} {
		d := distuv.Gamma{Alpha: shape, Beta: 1}
		for _, sign := range []float64{1, -1} {
			s := new(Sum)
			s.Gamma(shape, sign)
			l := s.Law()
			for _, p := range []float64{0.02, 0.3, 0.6, 0.97} {
				at := d.Quantile(p)
				want := p
				if sign < 0 {
					want = 1 - p
				}
				near.Absolute(t, fmt.Sprintf("shape %v, sign %v, below %v", shape, sign, at), want, l.Below(sign*(at-shape)), 2e-5)
			}
		}
	}
}

// part is a quantity as it goes into a sum and as it is drawn.
type part struct {
	add  func(s *Sum)
	draw func() float64
}

// parts are of all kinds, about 0, with sizes of their own.
func parts(random *rand.Rand) []part {
	size := math.Pow(10, 2*random.Float64()-2)
	uniform := func() float64 { return 2*random.Float64() - 1 }
	shape := 0.5 + 5*random.Float64()
	g := distuv.Gamma{Alpha: shape, Beta: 1, Src: random}
	scale := size / math.Sqrt(shape)
	wave := func(x float64) float64 { return 0.5 + math.Asin(max(-1, min(x/size, 1)))/math.Pi }
	return []part{
		{func(s *Sum) { s.Normal(size) }, func() float64 { return size * random.NormFloat64() }},
		{func(s *Sum) { s.Flat(size) }, func() float64 { return size * uniform() }},
		{func(s *Sum) { s.Gamma(shape, -scale) }, func() float64 { return scale * (shape - g.Rand()) }},
		{func(s *Sum) { s.Bounded(wave, size*size/2, size) }, func() float64 { return size * math.Sin(math.Pi*uniform()) }},
		{func(s *Sum) {
			s.CutOff(func(x float64) float64 { return 0.5 + math.Atan(x/size)/math.Pi }, size, 40*size)
		}, func() float64 { return max(-40*size, min(size*math.Tan(math.Pi/2*uniform()), 40*size)) }},
	}
}

// TestLawOfRandomSums: against the order of 200 000 draws, within 4.5 standard errors.
func TestLawOfRandomSums(t *testing.T) {
	const trials = 200_000
	random := rand.New(rand.NewPCG(7, 8))
	for range 12 {
		s, values, kinds := new(Sum), make([]float64, trials), []int{}
		for range 2 + random.IntN(6) {
			kind := random.IntN(5)
			p := parts(random)[kind]
			kinds = append(kinds, kind)
			p.add(s)
			for i := range values {
				values[i] += p.draw()
			}
		}
		l := s.Law()
		slices.Sort(values)
		for _, p := range []float64{0.001, 0.025, 0.1, 0.5, 0.9, 0.975, 0.999} {
			off := l.Below(values[int(p*trials)]) - p
			near.Absolute(t, fmt.Sprintf("%v, below %v", kinds, p), 0, off/math.Sqrt(p*(1-p)/trials), 4.5)
			near.Absolute(t, fmt.Sprintf("%v, there and back from %v", kinds, p), p, l.Below(l.At(p)), 1e-9)
		}
	}
}

// TestNoLaw: nothing that varies, and what is too large or too small to be squared.
func TestNoLaw(t *testing.T) {
	for _, size := range []float64{0, 1e200, 1e-200, math.Inf(1), math.NaN()} {
		s := new(Sum)
		s.Normal(size)
		s.Flat(size)
		assert.Nil(t, s.Law(), size)
	}
}

// TestCoarse: tails that reach a thousand times further than most of it.
func TestCoarse(t *testing.T) {
	for reach, coarse := range map[float64]bool{40: false, 2000: true} {
		s := new(Sum)
		s.CutOff(func(x float64) float64 { return 0.5 + math.Atan(x)/math.Pi }, 1, reach)
		assert.Equal(t, coarse, s.Law().Coarse, reach)
	}
}

// TestKernels beside their distribution functions in gonum.
func TestKernels(t *testing.T) {
	triangle := distuv.NewTriangle(-1, 1, 0, nil)
	for name, c := range map[string]struct {
		kernel Kernel
		want   func(x float64) float64
	}{
		"flat":   {Flat(), distuv.Uniform{Min: -1, Max: 1}.CDF},
		"peaked": {Peaked(), triangle.CDF},
		"bell":   {Bell(), distuv.UnitNormal.CDF},
		"known":  {Known(3, distuv.UnitNormal.CDF), distuv.UnitNormal.CDF},
	} {
		for x := -9.6; x < 9.6; x += 0.173 {
			at := []float64{x}
			c.kernel.Below(at, nil)
			near.Absolute(t, fmt.Sprint(name, " at ", x), c.want(x), at[0], 2e-9)
		}
		far := []float64{math.Inf(-1), math.Inf(1)}
		c.kernel.BelowCut(far, nil)
		near.Absolute(t, name+", far below", 0, far[0], 1e-15)
		near.Absolute(t, name+", far above", 1, far[1], 1e-15)
	}
}

// TestCutKernel: what is left of a normal distribution within ±cut, with a scale of its own.
func TestCutKernel(t *testing.T) {
	k := Bell()
	k.Cut = 3
	for _, scale := range []float64{0.3, 1, 4, 5000} {
		normal := distuv.Normal{Sigma: scale}
		for x := -3.5; x <= 3.5; x += 0.25 {
			whole := normal.CDF(3) - normal.CDF(-3)
			want := (normal.CDF(max(-3, min(x, 3))) - normal.CDF(-3)) / whole
			at := []float64{x}
			k.BelowCut(at, []float64{scale})
			near.Absolute(t, fmt.Sprintf("scale %v, at %v", scale, x), want, at[0], 1e-7)
			at[0] = x
			k.Below(at, []float64{scale})
			near.Absolute(t, fmt.Sprintf("uncut, scale %v, at %v", scale, x), normal.CDF(x), at[0], 2e-9)
		}
	}
}

// TestCurve: parabolas are gone through exactly but at the ends, and nothing leads beyond the points.
func TestCurve(t *testing.T) {
	f := func(x float64) float64 { return 2 + x + 3*x*x }
	x := []float64{0, 0.5, 1.25, 2, 3}
	y := make([]float64, len(x))
	for i := range x {
		y[i] = f(x[i])
	}
	c := NewCurve(x, y)
	for at := 0.0; at <= 3; at += 0.125 {
		near.Absolute(t, fmt.Sprint("at ", at), f(at), c.At(at), 1e-12)
	}
	assert.Equal(t, []float64{f(0), f(3)}, []float64{c.At(-2), c.At(4)})
	steps := NewCurve([]float64{0, 1000, 1001, 1002, 5000}, []float64{0, 0.01, 0.9, 1, 1})
	before := 0.0
	for at := 0.0; at <= 5000; at++ {
		y := steps.At(at)
		assert.True(t, before <= y && y <= 1, at)
		before = y
	}
}
