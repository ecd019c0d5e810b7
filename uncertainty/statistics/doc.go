// Package statistics says what many values have to say: mean and variance, what lies where in their
// order, and coverage intervals by that order.
package statistics
