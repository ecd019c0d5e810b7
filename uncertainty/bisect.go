package uncertainty

// bisect returns the end of the part of low to high for which a condition
// holds, that holds at low and fails for good somewhere on the way: the last
// number known to meet it, to 64 binary digits of high - low.
func bisect(low, high float64, holds func(float64) bool) float64 {
	for range 64 {
		if middle := low + (high-low)/2; holds(middle) {
			low = middle
		} else {
			high = middle
		}
	}
	return low
}
