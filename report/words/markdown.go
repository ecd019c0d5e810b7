package words

import (
	"math"
	"strings"

	"minim/equipment/quantity"
	"minim/uncertainty"
)

// FineShare prints a share of a variance with two significant digits.
func FineShare(x float64) string {
	if x != 0 && math.Abs(x) < 1e-4 {
		return "under 0.01 %"
	}
	return quantity.Percent(x)
}

// marks of a line of the budget: shared by several uses, assumed.
func marks(line *uncertainty.Contribution) string {
	var words []string
	if line.Uses > 1 {
		words = append(words, "shared")
	}
	if line.Assumed {
		words = append(words, "assumed")
	}
	return strings.Join(words, ", ")
}
