package statistics

import (
	"testing"

	"minim/uncertainty/near"
)

// TestMeanAndVariance: constructed, with a mean that is large beside the scatter.
func TestMeanAndVariance(t *testing.T) {
	mean, variance := MeanAndVariance([]float64{1e9 + 1, 1e9 + 2, 1e9 + 6})
	near.Relative(t, "mean", 1e9+3, mean, 0)
	near.Relative(t, "variance", 7, variance, 1e-15)
}
