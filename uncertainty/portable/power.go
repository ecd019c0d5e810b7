package portable

import "math"

// Power is x to the whole number n, by multiplications: its error grows with n.
func Power(x float64, n int) float64 {
	if n < 0 {
		return 1 / Power(x, -n)
	}
	product := 1.0
	for ; n > 0; n-- {
		product *= x
	}
	return product
}

// Pow is x^y for x above 0. Its relative error is about that of y ln x.
func Pow(x, y float64) float64 {
	if y == math.Trunc(y) && math.Abs(y) <= 8 {
		return Power(x, int(y))
	}
	return Exp(y * Log(x))
}
