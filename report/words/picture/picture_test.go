package picture

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// What is not drawn is counted, in words for one and for more.
func TestNotShown(t *testing.T) {
	assert.Equal(t, "1 route of this kind is not shown.", notShown(1, "of this kind"))
	assert.Equal(t, "3 routes of this kind are not shown.", notShown(3, "of this kind"))
}

// Each number of dilutions has words, also one that is more than any that has its own.
func TestDilutions(t *testing.T) {
	assert.Equal(t, "direct", Dilutions(0))
	assert.Equal(t, "four dilutions", Dilutions(4))
	assert.Equal(t, "five dilutions or more", Dilutions(5))
	assert.Equal(t, "five dilutions or more", Dilutions(9))
}

// A title that is a question needs no colon behind it.
func TestHeading(t *testing.T) {
	for title, want := range map[string]string{"Stain": "Stain: ", "Why dilute in steps?": "Why dilute in steps? ", "": ""} {
		assert.Equal(t, want, titled(title))
	}
}
