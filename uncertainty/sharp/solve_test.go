package sharp

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty/near"
)

// TestSolve: constructed from the solution, and a matrix with two rows alike.
func TestSolve(t *testing.T) {
	x, ok := solve([][]float64{{4}, {2, 5}, {-1, 3, 9}}, []float64{4*1 + 2*-2 - 0.5, 2*1 + 5*-2 + 3*0.5, -1 + 3*-2 + 9*0.5})
	assert.True(t, ok)
	for i, want := range []float64{1, -2, 0.5} {
		near.Relative(t, "x", want, x[i], 1e-15)
	}
	_, ok = solve([][]float64{{1}, {1.1, 1.1 * 1.1}}, []float64{1, 1.1})
	assert.False(t, ok)
}
