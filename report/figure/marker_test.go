package figure

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty/near"
)

// All marks but the star have the same area.
func TestMarksAreOfOneSize(t *testing.T) {
	for i, m := range marks[:len(marks)-1] {
		twice := 0.0
		for i, a := range m.corners {
			b := m.corners[(i+1)%len(m.corners)]
			twice += float64(a.X*b.Y - b.X*a.Y)
		}
		near.Relative(t, fmt.Sprint(i), 0.8*math.Pi, twice/2, 1e-9)
	}
}

// Each mark has a colour, a shape and dashes of its own, so that any one of them
// tells it from the others.
func TestMarksDiffer(t *testing.T) {
	colours, shapes, dashes := map[string]bool{}, map[string]bool{}, map[string]bool{}
	for _, m := range marks {
		colours[fmt.Sprint(m.colour)], shapes[fmt.Sprintf("%.3f", m.corners)], dashes[fmt.Sprint(m.dashes)] = true, true, true
	}
	assert.Len(t, colours, len(marks))
	assert.Len(t, shapes, len(marks))
	assert.Len(t, dashes, len(marks))
	assert.Equal(t, &marks[0], markOf(0))
	assert.Equal(t, &marks[5], markOf(5))
	assert.Equal(t, &marks[5], markOf(12))
}
