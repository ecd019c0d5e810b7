package portable

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
