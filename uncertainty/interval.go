package uncertainty

import "math"

// spanOf returns q, the number of steps between the order statistics that end
// a coverage interval (JCGM 101, 7.7.2): pM, rounded when not an integer.
func spanOf(trials int, coverage float64) int {
	pM := coverage * float64(trials)
	return min(int(math.Floor(pM+0.5)), trials-1)
}

// symmetricInterval returns the probabilistically symmetric coverage interval
// of values in rising order: [y(r), y(r+q)], r = (M - q)/2, rounded up.
func symmetricInterval(sorted []float64, coverage float64) (low, high float64) {
	q := spanOf(len(sorted), coverage)
	r := max((len(sorted)-q+1)/2, 1)
	return sorted[r-1], sorted[r-1+q]
}

// shortestInterval returns the shortest coverage interval of values in rising
// order: the least y(r+q) - y(r) over all r.
func shortestInterval(sorted []float64, coverage float64) (low, high float64) {
	q := spanOf(len(sorted), coverage)
	best := 0
	for r := range len(sorted) - q {
		if sorted[r+q]-sorted[r] < sorted[best+q]-sorted[best] {
			best = r
		}
	}
	return sorted[best], sorted[best+q]
}
