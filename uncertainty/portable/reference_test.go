package portable

import (
	"math"
	"math/big"
	"math/rand/v2"
	"testing"
)

// The references are the series of the functions, and Newton's method for the logarithm,
// in numbers of many bits: nothing of them is shared with what they check.

const bits = 400

func num(x float64) *big.Float { return new(big.Float).SetPrec(bits).SetFloat64(x) }

func zero(like *big.Float) *big.Float { return new(big.Float).SetPrec(like.Prec()) }

// series adds up terms from a first one until they count no more, each following from
// the one before: term n is times by(n).
func series(first *big.Float, by func(n int, term *big.Float)) *big.Float {
	sum, term := zero(first).Set(first), zero(first).Set(first)
	for n := 1; term.Sign() != 0; n++ {
		by(n, term)
		if sum.Sign() != 0 && term.Sign() != 0 && term.MantExp(nil) < sum.MantExp(nil)-int(first.Prec()) {
			break
		}
		sum.Add(sum, term)
	}
	return sum
}

func whole(n int, like *big.Float) *big.Float { return zero(like).SetInt64(int64(n)) }

// bigExp is e^x = (e^(x/2^12))^(2^12).
func bigExp(x *big.Float) *big.Float {
	small := zero(x).SetMantExp(x, -12)
	e := series(whole(1, x), func(n int, term *big.Float) { term.Mul(term, small).Quo(term, whole(n, x)) })
	for range 12 {
		e.Mul(e, e)
	}
	return e
}

// bigLog solves e^y = x.
func bigLog(x *big.Float) *big.Float {
	f, _ := x.Float64()
	m, exponent := math.Frexp(f)
	y := zero(x).SetFloat64(math.Log(m) + float64(exponent)*math.Ln2)
	for range 5 {
		e := bigExp(y)
		step := zero(x).Quo(zero(x).Sub(x, e), e)
		y.Add(y, step)
	}
	return y
}

func bigSin(x *big.Float) *big.Float {
	square := zero(x).Mul(x, x)
	square.Neg(square)
	return series(x, func(n int, term *big.Float) { term.Mul(term, square).Quo(term, whole(2*n*(2*n+1), x)) })
}

func bigCos(x *big.Float) *big.Float {
	square := zero(x).Mul(x, x)
	square.Neg(square)
	return series(whole(1, x), func(n int, term *big.Float) { term.Mul(term, square).Quo(term, whole(2*n*(2*n-1), x)) })
}

// bigErf is 2x/√π Σ (-x²)^n/(n! (2n + 1)) (Abramowitz and Stegun, 7.1.5), with bits
// enough for what cancels.
func bigErf(x float64) *big.Float {
	wide := new(big.Float).SetPrec(3200).SetFloat64(x)
	square := zero(wide).Mul(wide, wide)
	square.Neg(square)
	power, sum := zero(wide).Set(wide), zero(wide).Set(wide)
	for n := 1; power.MantExp(nil) > -3200 && power.Sign() != 0; n++ {
		power.Mul(power, square).Quo(power, whole(n, wide))
		sum.Add(sum, zero(wide).Quo(power, whole(2*n+1, wide)))
	}
	pi := new(big.Float).SetPrec(1500).SetInt(halfPi())
	pi.SetMantExp(pi, 1-piBits)
	root := zero(wide).Sqrt(pi)
	return sum.Quo(sum.Mul(sum, whole(2, wide)), root)
}

// units is the distance of a result from the reference in units of its last place.
func units(got float64, want *big.Float) float64 {
	w, _ := want.Float64()
	off, _ := zero(want).Sub(want, zero(want).SetFloat64(got)).Float64()
	return math.Abs(off) / (math.Nextafter(math.Abs(w), math.Inf(1)) - math.Abs(w))
}

// within checks at random points between two numbers, and at them, that a function is
// within so many units of the last place.
func within(t *testing.T, what string, most, low, high float64, f func(float64) float64, reference func(*big.Float) *big.Float) {
	t.Helper()
	random, worst, at := rand.New(rand.NewPCG(1, 2)), 0.0, 0.0
	for i := range 300 {
		x := []float64{low, high}[i%2]
		if i > 1 {
			x = low + (high-low)*random.Float64()
		}
		if u := units(f(x), reference(num(x))); !(u <= worst) {
			worst, at = u, x
		}
	}
	t.Logf("%s: %.3f units at most, at %v", what, worst, at)
	if !(worst <= most) {
		t.Errorf("%s is %.3g units of the last place off at %v, more than %v", what, worst, at, most)
	}
}
