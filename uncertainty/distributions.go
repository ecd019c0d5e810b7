package uncertainty

import "minim/uncertainty/distribution"

// The distributions are those of package distribution.
type (
	// Distribution is the state of knowledge about an influence.
	Distribution = distribution.Distribution
	// Summary of a distribution.
	Summary = distribution.Summary
	// Normal, StudentT, Rectangular, Gamma and Tabulated are distributions.
	Normal      = distribution.Normal
	StudentT    = distribution.StudentT
	Rectangular = distribution.Rectangular
	Gamma       = distribution.Gamma
	Tabulated   = distribution.Tabulated
	// Prior is what was known before readings, Measured what they say.
	Prior    = distribution.Prior
	Measured = distribution.Measured
)

// PlusMinus is the rectangular distribution of an error within ±limit.
func PlusMinus(limit float64) Rectangular { return distribution.PlusMinus(limit) }

// Peaked is the triangular distribution of an error within ±limit.
func Peaked(limit float64) Distribution { return distribution.Peaked(limit) }

// GammaBelow is [distribution.GammaBelow].
func GammaBelow(mu, sigma, most float64) Distribution {
	return distribution.GammaBelow(mu, sigma, most)
}

// SummaryOf is the summary of a distribution.
func SummaryOf(d Distribution) Summary { return d.Summary() }

// Shape is [distribution.Shape].
func Shape(d Distribution) string { return distribution.Shape(d) }
