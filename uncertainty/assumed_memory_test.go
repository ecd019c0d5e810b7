package uncertainty

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// What rests on memory is counted by itself; it may be assumed as well, and a posterior rests on its
// prior in part (constructed).
func TestMemoryShare(t *testing.T) {
	line := func(share float64, g Ground, assumed bool, part float64) Contribution {
		return Contribution{Influence: Influence{Ground: g, Assumed: assumed, AssumedPart: part}, Share: share}
	}
	a := Analytic{Budget: []Contribution{
		line(0.3, Ground{By: Tabled, Trust: "from memory"}, true, 0), line(0.2, Ground{By: Remembered}, false, 0),
		line(0.1, Ground{By: ObservedWithin, Trust: "from memory"}, true, 0.5), line(0.4, Ground{By: Tabled, Trust: "two sources"}, true, 0),
	}}
	assert.InDelta(t, 0.55, a.MemoryShare(), 1e-12)
	assert.InDelta(t, 0.75, a.AssumedShare(), 1e-12)
}
