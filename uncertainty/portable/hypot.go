package portable

import "math"

// Hypot is √(x² + y²), without overflow on the way.
func Hypot(x, y float64) float64 {
	large, small := math.Abs(x), math.Abs(y)
	if large < small {
		large, small = small, large
	}
	if large == 0 || math.IsInf(large, 1) {
		return large
	}
	ratio := small / large
	return large * math.Sqrt(1+float64(ratio*ratio))
}
