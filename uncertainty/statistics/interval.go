package statistics

import "math"

// spanOf returns q, the number of steps between the order statistics that end
// a coverage interval (JCGM 101, 7.7.2): pM, rounded when not an integer.
func spanOf(trials int, coverage float64) int {
	pM := float64(coverage * float64(trials))
	return min(int(math.Floor(pM+0.5)), trials-1)
}

// SymmetricRanks returns the ranks, from 0, that end the probabilistically
// symmetric coverage interval [y(r), y(r+q)], r = (M - q)/2, rounded up.
func SymmetricRanks(trials int, coverage float64) (low, high int) {
	q := spanOf(trials, coverage)
	r := max((trials-q+1)/2, 1)
	return r - 1, r - 1 + q
}

func SymmetricInterval(t Tally, coverage float64) (low, high float64) {
	l, h := SymmetricRanks(t.Size(), coverage)
	return t.At(l), t.At(h)
}

// QuantileError is the standard error of the value of rank k, from the spread of
// the values whose ranks lie within the standard deviation of that rank,
// √(M p (1-p)).
func QuantileError(t Tally, k int) float64 {
	n := t.Size()
	p := (float64(k) + 0.5) / float64(n)
	by := max(1, int(math.Round(math.Sqrt(float64(n)*p*(1-p)))))
	return (t.At(min(k+by, n-1)) - t.At(max(k-by, 0))) / 2
}
