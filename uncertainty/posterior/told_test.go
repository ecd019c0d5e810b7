package posterior

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty/near"
	"minim/uncertainty/portable"
)

// TestStudentOfPosterior goes there and back, and far out to no number's end.
func TestStudentOfPosterior(t *testing.T) {
	table, ok := Prior{Shape: Peaked, Low: -0.5, High: 0.5}.Given(Measured{Mean: 0.2, Scale: 0.3, Nu: 3})
	assert.True(t, ok)
	told := NewTold(*table, 3)
	for x := -30.0; x < 30; x += 0.37 {
		near.Relative(t, "t", x, told.Student(told.At(x)), 1e-6)
	}
	assert.Equal(t, []float64{math.Inf(-1), math.Inf(1)}, []float64{told.Student(-0.5), told.Student(0.5)})
	for _, p := range []float64{0.001, 0.2, 0.5, 0.97} { // as much lies below
		near.Absolute(t, "below", p, portable.StudentCDF(told.Student(table.Quantile(p)), 3), 1e-5)
	}
}
