package figure

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"gonum.org/v1/plot/vg"
)

// Words stand at the right of their point, then wherever nothing is covered.
func TestPlacer(t *testing.T) {
	p := &placer{within: area{0, 0, 100, 100}, taken: []area{squareRound(vg.Point{X: 50, Y: 50}, 5)}}
	at := vg.Point{X: 50, Y: 50}
	first, found := p.place(at, 20, 10, 100)
	assert.True(t, found)
	assert.True(t, first.x0 >= 55 && first.y0 < 50 && first.y1 > 50, "at the right, level with the point: %v", first)
	second, found := p.place(at, 20, 10, 100)
	assert.True(t, found)
	assert.False(t, second.meets(first))
	_, found = p.place(at, 20, 10, 3)
	assert.False(t, found, "none within reach")
	_, found = p.place(at, 101, 10, 1000)
	assert.False(t, found, "wider than the panel")
	p.follow(vg.Point{X: 0, Y: 0}, vg.Point{X: 100, Y: 100})
	third, found := p.place(vg.Point{X: 20, Y: 20}, 20, 10, 100)
	assert.True(t, found)
	for share := 0.0; share <= 1; share += 0.01 {
		assert.False(t, third.holds(along(vg.Point{}, vg.Point{X: 100, Y: 100}, share)))
	}
}
