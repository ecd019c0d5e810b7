package portable

// Polynomial is c[0] + c[1] x + c[2] x² + …, by Horner's rule.
func Polynomial(x float64, c ...float64) float64 {
	sum := 0.0
	for i := len(c) - 1; i >= 0; i-- {
		sum = float64(sum*x) + c[i]
	}
	return sum
}
