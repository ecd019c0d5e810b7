package quantity

// Same reports whether two texts are one quantity: "1.0 g" and "1000 mg", or in a unit that
// is not of a kind "0.04 % w/v" and "0.040 % w/v".
func Same(a, b string) bool {
	for kind := range kinds {
		x, errA := Parse(Kind(kind), a)
		y, errB := Parse(Kind(kind), b)
		if errA == nil && errB == nil {
			return x == y
		}
	}
	x, unit, errA := Split(a)
	y, other, errB := Split(b)
	return errA == nil && errB == nil && x == y && unit == other
}
