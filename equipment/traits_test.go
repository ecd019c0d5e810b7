package equipment

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// TestKindsAreWhole holds the table of kinds: what has no default is stated of each, and
// a figure of it in no other list.
func TestKindsAreWhole(t *testing.T) {
	for _, is := range kinds {
		kind := is.kind
		assert.Contains(t, []retention{filmByCapacity, unknownFilm, dropInTip, pressedEmpty}, is.keeps, "%s: what stays in it is not stated", kind)
		assert.Contains(t, []care{counted, pressed, runsOut, poured}, is.Care, "%s: what to mind with it is not stated", kind)
		assert.Contains(t, []Shape{triangle, rectangle}, is.shape, "%s: the shape of its limit is not stated", kind)
		film := is.keeps == filmByCapacity || is.keeps == unknownFilm
		assert.Equal(t, is.Receives, film, "%s: what receives is poured out", kind)
		assert.Equal(t, film, is.Care == poured, "%s: what keeps a film is poured out", kind)
		assert.Equal(t, is.Set, is.keeps == pressedEmpty, "%s: what is set is pressed empty", kind)
		assert.Equal(t, is.Counts, is.Care == counted, "%s: drops are counted", kind)
		assert.NotEmpty(t, is.Table, "%s: no table of a kit holds it", kind)
	}
}
