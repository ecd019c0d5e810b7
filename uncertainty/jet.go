package uncertainty

// jet is a quantity as a polynomial in two small steps s and t, cut off after
// s³ and s²t: the Taylor coefficients that the third derivatives of the second
// order need. Operations on jets are those of polynomials, so that all
// derivatives are exact.
type jet struct{ f, s, ss, sss, t, st, sst float64 }

// times keeps a product from being fused with a sum, so that the digits are the
// same on every machine.
func times(a, b float64) float64 { return float64(a * b) }

func (a jet) plus(b jet, sign float64) jet {
	return jet{
		a.f + times(sign, b.f), a.s + times(sign, b.s), a.ss + times(sign, b.ss), a.sss + times(sign, b.sss),
		a.t + times(sign, b.t), a.st + times(sign, b.st), a.sst + times(sign, b.sst),
	}
}

func (a jet) scaled(by float64) jet {
	return jet{by * a.f, by * a.s, by * a.ss, by * a.sss, by * a.t, by * a.st, by * a.sst}
}

func (a jet) multiply(b jet) jet {
	return jet{
		f:   a.f * b.f,
		s:   times(a.f, b.s) + times(a.s, b.f),
		ss:  times(a.f, b.ss) + times(a.s, b.s) + times(a.ss, b.f),
		sss: times(a.f, b.sss) + times(a.s, b.ss) + times(a.ss, b.s) + times(a.sss, b.f),
		t:   times(a.f, b.t) + times(a.t, b.f),
		st:  times(a.f, b.st) + times(a.s, b.t) + times(a.t, b.s) + times(a.st, b.f),
		sst: times(a.f, b.sst) + times(a.s, b.st) + times(a.ss, b.t) + times(a.t, b.ss) + times(a.st, b.s) + times(a.sst, b.f),
	}
}

// divide solves c b = a for c, coefficient by coefficient.
func (a jet) divide(b jet) jet {
	var c jet
	c.f = a.f / b.f
	c.s = (a.s - times(c.f, b.s)) / b.f
	c.ss = (a.ss - times(c.f, b.ss) - times(c.s, b.s)) / b.f
	c.sss = (a.sss - times(c.f, b.sss) - times(c.s, b.ss) - times(c.ss, b.s)) / b.f
	c.t = (a.t - times(c.f, b.t)) / b.f
	c.st = (a.st - times(c.f, b.st) - times(c.s, b.t) - times(c.t, b.s)) / b.f
	c.sst = (a.sst - times(c.f, b.sst) - times(c.s, b.st) - times(c.ss, b.t) - times(c.t, b.ss) - times(c.st, b.s)) / b.f
	return c
}

// compose is a function of a, given the function and its first three
// derivatives at a.f.
func (a jet) compose(f, f1, f2, f3 float64) jet {
	a.f = 0
	square := a.multiply(a)
	sum := a.scaled(f1).plus(square.scaled(f2/2), 1).plus(square.multiply(a).scaled(f3/6), 1)
	sum.f = f
	return sum
}

func (n *node) jet(all []jet) jet {
	a := all[n.left]
	switch n.op {
	case opSine, opCosine:
		f, slope := n.op.unary(a.f)
		return a.compose(f, slope, -f, -slope)
	}
	b := all[n.right]
	switch n.op {
	case opAdd:
		return a.plus(b, 1)
	case opSubtract:
		return a.plus(b, -1)
	case opMultiply:
		return a.multiply(b)
	default:
		return a.divide(b)
	}
}
