package distribution

// Shape is the kind of a distribution in one word: "normal", "t", "gamma", "gamma-cut" of one that is
// cut off, "rectangular", "triangular", "table" of one that is known by a table, "exact" of one
// without a width.
func Shape(d Distribution) string {
	if d.Summary().StandardUncertainty == 0 {
		return "exact"
	}
	switch d.(type) {
	case Normal:
		return "normal"
	case StudentT:
		return "t"
	case Gamma:
		return "gamma"
	case CutGamma:
		return "gamma-cut"
	case Rectangular:
		return "rectangular"
	case Triangular:
		return "triangular"
	}
	return "table"
}
