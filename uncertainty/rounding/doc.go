// Package rounding prints values with their uncertainties, and tells to how many digits figures
// hold.
package rounding
