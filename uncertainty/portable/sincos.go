package portable

import "math"

// π/2 in three parts, the first two of 33 bits, so that their products with whole
// numbers below 2^20 are exact (after Cody and Waite, Software Manual for the
// Elementary Functions, 1980).
const (
	halfPiHigh   = 0x1.921fb544p0
	halfPiMiddle = 0x1.0b4611a6p-34
	halfPiLow    = 0x1.3198a2e037073p-69
)

// sineTerms and cosineTerms are what follows x and 1 - x²/2 in the series, in x², over
// x³ and x⁴.
var sineTerms, cosineTerms = alternating(inverseFactorials(3, 2, 9), -1), alternating(inverseFactorials(4, 2, 8), 1)

func alternating(list []float64, sign float64) []float64 {
	for i := range list {
		list[i] *= sign
		sign = -sign
	}
	return list
}

// Sincos is the sine and the cosine of an angle in radians, NaN of one that is infinite. The
// angle is taken to within π/4 of 0 by quarter turns, and then
// both follow from their series.
func Sincos(x float64) (sin, cos float64) {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return math.NaN(), math.NaN()
	}
	turns, high, low := quarterTurns(x)
	sin, cos = nearSine(high, low), nearCosine(high, low)
	switch turns & 3 {
	case 1:
		return cos, -sin
	case 2:
		return -sin, -cos
	case 3:
		return -cos, sin
	}
	return sin, cos
}

// quarterTurns takes the whole number of quarter turns nearest to it off an angle. What
// is left is high + low, the second being what the first has lost in rounding.
func quarterTurns(x float64) (turns int, high, low float64) {
	if math.Abs(x) <= math.Pi/4 {
		return 0, x, 0
	}
	if math.Abs(x) > 1e6 {
		return manyQuarterTurns(x)
	}
	n := math.Round(x * (2 / math.Pi))
	first, second := x-float64(n*halfPiHigh), float64(n*halfPiMiddle)
	r := first - second
	back := r - first
	lost := (first - (r - back)) - (second + back)
	lost -= float64(n * halfPiLow)
	high = r + lost
	return int(n), high, lost - (high - r)
}

func nearSine(x, low float64) float64 {
	square := float64(x * x)
	cube := float64(square * x)
	return x + (float64(cube*Polynomial(square, sineTerms...)) + float64(low*(1-float64(square/2))))
}

func nearCosine(x, low float64) float64 {
	square := float64(x * x)
	half := float64(square / 2)
	w := 1 - half
	lost := (1 - w) - half
	return w + (lost + (float64(square*square*Polynomial(square, cosineTerms...)) - float64(x*low)))
}
