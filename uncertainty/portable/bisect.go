package portable

// Bisect returns the end of the part of low to high for which a condition
// holds, that holds at low and fails for good somewhere on the way: the last
// number known to meet it, to 64 binary digits of high - low.
func Bisect(low, high float64, holds func(float64) bool) float64 {
	for range 64 {
		if x := Middle(low, high); holds(x) {
			low = x
		} else {
			high = x
		}
	}
	return low
}

// Middle of two numbers, without overflow on the way.
func Middle(low, high float64) float64 { return low + float64((high-low)/2) }
