package portable

import "math"

// IsFinite reports whether x is a number, and no infinite one.
func IsFinite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }
