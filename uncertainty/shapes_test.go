package uncertainty

import "minim/uncertainty/portable"

// wider are the limits of an interval that is factor times as wide about the same middle.
func wider(low, high, factor float64) (wideLow, wideHigh float64) {
	center := portable.Middle(low, high)
	return center + float64(factor*(low-center)), center + float64(factor*(high-center))
}

// bounds reports whether [low, high] is an interval, be it of zero width.
func bounds(low, high float64) bool { return low <= high && portable.IsFinite(high-low) }
