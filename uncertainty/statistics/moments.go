package statistics

// MeanAndVariance of values, the second with n - 1 in its denominator. The mean is
// corrected by the mean deviation from it, and from the sum of squares is taken what is
// left of that of the deviations (Chan, Golub and LeVeque, Algorithms for computing the
// sample variance, Am. Stat. 37, 1983).
func MeanAndVariance(values []float64) (mean, variance float64) {
	n := float64(len(values))
	mean = MeanFrom(values, 0)
	mean += MeanFrom(values, mean)
	var squares, rest total
	for _, v := range values {
		d := v - mean
		squares.add(float64(d * d))
		rest.add(d)
	}
	return mean, (squares.sum - float64(rest.sum*rest.sum/n)) / (n - 1)
}

// MeanFrom is the mean distance of values from a center.
func MeanFrom(values []float64, center float64) float64 {
	var t total
	for _, v := range values {
		t.add(v - center)
	}
	return t.sum / float64(len(values))
}

// total is a sum that makes up for what it loses in rounding (Kahan, Further remarks on
// reducing truncation errors, CACM 8, 1965).
type total struct{ sum, excess float64 }

func (t *total) add(x float64) {
	x -= t.excess
	sum := t.sum + x
	t.excess = (sum - t.sum) - x
	t.sum = sum
}
