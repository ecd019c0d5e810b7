package equipment

// Crossing finds the two neighbouring readings, in digits from 1 to most, between which
// what is made turns from too weak to too strong, or an end of the scale and its
// neighbour where it never does. Of a reading that cannot be done, strong says that it is
// not possible; it then counts as too far from the planned one, which is.
func Crossing(planned float64, most int, rising bool, strong func(n int) (yes, possible bool)) (low, high int) {
	low, high = 1, max(1, most)
	for high-low > 1 {
		middle := (low + high) / 2
		yes, possible := strong(middle)
		if !possible {
			yes = (float64(middle) > planned) == rising
		}
		if yes == rising {
			high = middle
		} else {
			low = middle
		}
	}
	return low, high
}
