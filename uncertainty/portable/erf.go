package portable

import "math"

// Coefficients of Cody, Rational Chebyshev approximations for the error function, Math.
// Comp. 23, 1969, from memory, the least power first; the tests hold them against the
// series and the continued fraction. Of x² below nearZero, of x up to 4, of 1/x² beyond.
var (
	erfAbove = []float64{3.20937758913846947e3, 3.77485237685302021e2, 1.13864154151050156e2, 3.16112374387056560, 1.85777706184603153e-1}
	erfBelow = []float64{2.84423683343917062e3, 1.28261652607737228e3, 2.44024637934444173e2, 2.36012909523441209e1, 1}

	erfcAbove = []float64{1.23033935479799725e3, 2.05107837782607147e3, 1.71204761263407058e3, 8.81952221241769090e2, 2.98635138197400131e2,
		6.61191906371416295e1, 8.88314979438837594, 5.64188496988670089e-1, 2.15311535474403846e-8}
	erfcBelow = []float64{1.23033935480374942e3, 3.43936767414372164e3, 4.36261909014324716e3, 3.29079923573345963e3, 1.62138957456669019e3,
		5.37181101862009858e2, 1.17693950891312499e2, 1.57449261107098347e1, 1}

	farAbove = []float64{6.58749161529837803e-4, 1.60837851487422766e-2, 1.25781726111229246e-1, 3.60344899949804439e-1, 3.05326634961232344e-1, 1.63153871373020978e-2}
	farBelow = []float64{2.33520497626869185e-3, 6.05183413124413191e-2, 5.27905102951428412e-1, 1.87295284992346725, 2.56852019228982242, 1}
)

const nearZero = 0.46875

// Erf is the error function 2/√π ∫ exp(-t²) dt from 0 to x, within four units
// of the last place.
func Erf(x float64) float64 {
	if math.Abs(x) <= nearZero {
		square := float64(x * x)
		return x * Polynomial(square, erfAbove...) / Polynomial(square, erfBelow...)
	}
	return math.Copysign(1-erfcAt(math.Abs(x)), x)
}

// Erfc is 1 - Erf(x), with its digits where that is small, within four units of
// the last place.
func Erfc(x float64) float64 {
	switch {
	case math.Abs(x) <= nearZero:
		return 1 - Erf(x)
	case x < 0:
		return 2 - erfcAt(-x)
	}
	return erfcAt(x)
}

// erfcAt is erfc(x) for x above nearZero.
func erfcAt(x float64) float64 {
	switch {
	case x <= 4:
		return minusSquare(x) * Polynomial(x, erfcAbove...) / Polynomial(x, erfcBelow...)
	case x > 27.3:
		return 0
	}
	inverse := 1 / float64(x*x)
	least := float64(inverse * Polynomial(inverse, farAbove...) / Polynomial(inverse, farBelow...))
	return minusSquare(x) * ((1/math.Sqrt(math.Pi) - least) / x)
}

// minusSquare is exp(-x²). The square of x to a 16th is exact; so are the sum and the
// difference of both but for their last digits, which then count little.
func minusSquare(x float64) float64 {
	y := float64(math.Trunc(16*x) / 16)
	return Exp(-float64(y*y)) * Exp(-float64((x-y)*(x+y)))
}
