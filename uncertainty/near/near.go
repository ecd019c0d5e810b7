// Package near holds the one helper that the project's tests compare floating
// point numbers with.
package near

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/floats/scalar"
)

// Equal reports a test error unless got and want differ by no more than abs,
// or by no more than rel of the larger. NaN equals nothing.
func Equal(t testing.TB, what string, want, got, abs, rel float64) {
	t.Helper()
	if math.IsNaN(want) || math.IsNaN(got) || !scalar.EqualWithinAbsOrRel(want, got, abs, rel) {
		t.Errorf("%s: got %.12g, want %.12g (within %g or %g of it)", what, got, want, abs, rel)
	}
}

// Relative is [Equal] with a relative limit only.
func Relative(t testing.TB, what string, want, got, rel float64) {
	t.Helper()
	Equal(t, what, want, got, 0, rel)
}

// Absolute is [Equal] with an absolute limit only.
func Absolute(t testing.TB, what string, want, got, abs float64) {
	t.Helper()
	Equal(t, what, want, got, abs, 0)
}
