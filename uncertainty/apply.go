package uncertainty

// The loops over a block of trials. A result may take the place of an operand.

func fill(dst []float64, x float64) {
	for i := range dst {
		dst[i] = x
	}
}

// addScaled adds by (x - center) to dst.
func addScaled(dst, x []float64, center, by float64) {
	x = x[:len(dst)]
	for i := range dst {
		dst[i] += float64(by * (x[i] - center))
	}
}

func applyUnary(o op, dst, a []float64) {
	for i, x := range a[:len(dst)] {
		dst[i], _ = o.unary(x)
	}
}

func applyConstantLeft(o op, dst []float64, c float64, b []float64) {
	b = b[:len(dst)]
	switch o {
	case opSubtract:
		for i := range dst {
			dst[i] = c - b[i]
		}
	case opDivide:
		for i := range dst {
			dst[i] = c / b[i]
		}
	default:
		applyConstantRight(o, dst, b, c)
	}
}

func applyConstantRight(o op, dst, a []float64, c float64) {
	a = a[:len(dst)]
	switch o {
	case opAdd:
		for i := range dst {
			dst[i] = a[i] + c
		}
	case opSubtract:
		for i := range dst {
			dst[i] = a[i] - c
		}
	case opMultiply:
		for i := range dst {
			dst[i] = a[i] * c
		}
	case opDivide:
		for i := range dst {
			dst[i] = a[i] / c
		}
	}
}

func apply(o op, dst, a, b []float64) {
	a, b = a[:len(dst)], b[:len(dst)]
	switch o {
	case opAdd:
		for i := range dst {
			dst[i] = a[i] + b[i]
		}
	case opSubtract:
		for i := range dst {
			dst[i] = a[i] - b[i]
		}
	case opMultiply:
		for i := range dst {
			dst[i] = a[i] * b[i]
		}
	case opDivide:
		for i := range dst {
			dst[i] = a[i] / b[i]
		}
	}
}
