package equipment

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/report/words/note"
)

// said are notes in words.
type said struct{ Warnings, Assumed, FromMemory, NotCounted []string }

func worded(n *Notes) said {
	return said{note.Texts(n.Warnings), note.Texts(n.Assumed), note.Texts(n.FromMemory), note.Texts(n.NotCounted)}
}

// impossible asserts what a [Cannot] error says.
func impossible(t *testing.T, want string, err error) {
	t.Helper()
	var no *impossibility
	assert.ErrorAs(t, err, &no)
	assert.EqualError(t, err, want)
}
