package portable

import (
	"math"
	"math/big"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
)

func less1(f *big.Float) *big.Float { return f.Sub(f, whole(1, f)) }

func TestExp(t *testing.T) {
	within(t, "exp", 1, -1, 1, Exp, bigExp)
	within(t, "exp", 1, -700, 700, Exp, bigExp)
	within(t, "exp of little", 1, -1e-9, 1e-9, Exp, bigExp)
}

func TestLog(t *testing.T) {
	within(t, "log", 1, 0.5, 2, Log, bigLog)
	within(t, "log next to 1", 1, 1-1e-6, 1+1e-6, Log, bigLog)
	within(t, "log", 1, 1e-300, 1e300, Log, bigLog)
	within(t, "log", 1, 1e-310, 2e-308, Log, bigLog)
	plus1 := func(x *big.Float) *big.Float { return bigLog(zero(x).Add(x, whole(1, x))) }
	within(t, "log1p", 1.5, -0.999, 1, Log1p, plus1)
	within(t, "log1p", 1, -1e-6, 1e-6, Log1p, plus1)
	within(t, "log1p", 1, 0.4, 1e9, Log1p, plus1)
	within(t, "log1p", 1, 1e15, 1e17, Log1p, plus1)
}

func TestSincos(t *testing.T) {
	within(t, "sin", 1, -0.8, 0.8, sin, bigSin)
	within(t, "cos", 1, -0.8, 0.8, cos, bigCos)
	within(t, "sin", 1, -60, 60, sin, bigSin)
	within(t, "cos", 1, -60, 60, cos, bigCos)
	within(t, "sin of little", 1, -1e-5, 1e-5, sin, bigSin)
	for k := 1; k < 40; k++ {
		x := float64(k) * math.Pi
		assert.LessOrEqual(t, units(sin(x), bigSin(num(x))), 1.0, "sin(%v), next to %d π", x, k)
		assert.LessOrEqual(t, units(cos(x/2), bigCos(num(x/2))), 1.0, "cos(%v), next to %d π/2", x/2, k)
	}
}

// TestManyTurns: the reduction with all digits of π agrees with the short one where both
// hold, and with the standard library's beyond.
func TestManyTurns(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 4))
	for range 200 {
		x := (random.Float64() - 0.5) * 2e6
		n, high, _ := quarterTurns(x)
		many, exact, _ := manyQuarterTurns(x)
		assert.Equal(t, many, n&3, "quarter turns in %v", x)
		assert.Equal(t, exact, high, "what is left of %v", x)
		x *= math.Ldexp(1, random.IntN(1000))
		assert.InDelta(t, math.Sin(x), sin(x), 1e-15, "sin(%v)", x)
		assert.InDelta(t, math.Cos(x), cos(x), 1e-15, "cos(%v)", x)
	}
}

func TestErf(t *testing.T) {
	erf := func(x *big.Float) *big.Float { f, _ := x.Float64(); return bigErf(f) }
	erfc := func(x *big.Float) *big.Float { e := erf(x); return e.Neg(less1(e)) }
	for _, r := range [][2]float64{{-0.46875, 0.46875}, {0.47, 4}, {-6, -0.47}} {
		random := rand.New(rand.NewPCG(5, 6))
		for range 40 {
			x := r[0] + (r[1]-r[0])*random.Float64()
			assert.LessOrEqual(t, units(Erf(x), erf(num(x))), 4.0, "erf(%v)", x)
		}
	}
	for x := -6.0; x < 26; x += 0.37 {
		assert.LessOrEqual(t, units(Erfc(x), erfc(num(x))), 4.0, "erfc(%v)", x)
	}
}

// TestEnds: what is infinite, no number or beyond the range is as in the standard
// library.
func TestEnds(t *testing.T) {
	for what, f := range map[string][2]func(float64) float64{
		"exp": {math.Exp, Exp}, "log": {math.Log, Log}, "log1p": {math.Log1p, Log1p},
		"sin": {math.Sin, sin}, "cos": {math.Cos, cos}, "erf": {math.Erf, Erf}, "erfc": {math.Erfc, Erfc},
	} {
		for _, x := range []float64{0, -1, 1, -2, math.Inf(1), math.Inf(-1), math.NaN(), 1e300, -1e300, 1e-300, 711, -747} {
			want, got := f[0](x), f[1](x)
			if math.IsNaN(want) {
				assert.True(t, math.IsNaN(got), "%s(%v) is %v", what, x, got)
			} else if math.IsInf(want, 0) || want == 0 {
				assert.Equal(t, want, got, "%s(%v)", what, x)
			} else {
				assert.InEpsilon(t, want, got, 1e-15, "%s(%v)", what, x)
			}
		}
	}
	for _, c := range [][2]float64{{3, 4}, {0, 0}, {1e200, 1e200}, {math.Inf(-1), 1}, {5e-324, 0}} {
		assert.InDelta(t, 1, ratio(math.Hypot(c[0], c[1]), Hypot(c[0], c[1])), 4e-16, "hypot%v", c)
	}
	assert.True(t, math.IsNaN(Hypot(math.NaN(), 1)))
}

func ratio(a, b float64) float64 {
	if a == b {
		return 1
	}
	return a / b
}

func TestPower(t *testing.T) {
	assert.Equal(t, []float64{1, 1.5, 3.375, 1 / 2.25}, []float64{Power(1.5, 0), Power(1.5, 1), Power(1.5, 3), Power(1.5, -2)})
}

// TestDecade: constructed, at every power of ten and next to it.
func TestDecade(t *testing.T) {
	for e := -307; e <= 308; e++ {
		p := math.Pow10(e)
		assert.Equal(t, []int{e, e, e - 1}, []int{Decade(p), Decade(math.Nextafter(p, math.Inf(1))), Decade(math.Nextafter(p, 0))}, "10^%d", e)
	}
	assert.Equal(t, []int{-324, 308}, []int{Decade(math.SmallestNonzeroFloat64), Decade(math.MaxFloat64)})
	for _, x := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		assert.PanicsWithValue(t, "portable: only a finite number above 0 lies in a decade", func() { Decade(x) })
	}
}

func sin(x float64) float64 { s, _ := Sincos(x); return s }

func cos(x float64) float64 { _, c := Sincos(x); return c }

// TestAtan: the tangent of what it gives, as sine over cosine, and where it is known.
func TestAtan(t *testing.T) {
	random := rand.New(rand.NewPCG(9, 10))
	for range 2000 {
		x := math.Copysign(math.Exp(8*random.NormFloat64()), random.Float64()-0.5)
		a := num(Atan(x))
		// tan a - x over the slope 1 + x² is by how much a is off.
		off := zero(a).Quo(bigSin(a), bigCos(a))
		off.Sub(off, num(x)).Quo(off, num(1+x*x))
		f, _ := off.Float64()
		assert.LessOrEqual(t, math.Abs(f), 2*ulp(Atan(x)), "atan(%v)", x)
	}
	assert.Equal(t, []float64{math.Pi / 2, -math.Pi / 2, 0, math.Pi / 4}, []float64{Atan(math.Inf(1)), Atan(math.Inf(-1)), Atan(0), Atan(1)})
	assert.True(t, math.IsNaN(Atan(math.NaN())))
}

func ulp(x float64) float64 { return math.Nextafter(math.Abs(x), 10) - math.Abs(x) }
