package equipment

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// TestKindsAreWhole holds the table of kinds: what has no default is stated of each, and
// a figure of it in no other list.
func TestKindsAreWhole(t *testing.T) {
	for kind, is := range kinds {
		assert.Contains(t, []retention{filmByCapacity, unknownFilm, dropInTip, pressedEmpty}, is.keeps, "%s: what stays in it is not stated", kind)
		assert.Contains(t, []Care{Counted, Pressed, RunsOut, PouredOut}, is.care, "%s: what to mind with it is not stated", kind)
		assert.Contains(t, []Shape{Triangle, Rectangle}, is.shape, "%s: the shape of its limit is not stated", kind)
		poured := is.keeps == filmByCapacity || is.keeps == unknownFilm
		assert.Equal(t, is.receives, poured, "%s: what receives is poured out", kind)
		assert.Equal(t, poured, is.care == PouredOut, "%s: what keeps a film is poured out", kind)
		assert.Equal(t, is.set, is.keeps == pressedEmpty, "%s: what is set is pressed empty", kind)
	}
}
