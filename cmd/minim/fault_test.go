package main

import (
	"bytes"
	"context"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// torn is a writer that panics, as a mistake of the program would.
type torn struct{}

func (torn) Write([]byte) (int, error) { panic("a mistake\nof two lines \x1b[31m") }

// A panic ends with exit code 3 and one line that says what, where, in which version and
// command, and what to do; with the trace only where it is asked for.
func TestPanicIsOneLine(t *testing.T) {
	var said bytes.Buffer
	assert.Equal(t, exitFault, run(context.Background(), []string{"version"}, torn{}, &said))
	assert.Regexp(t, `^minim: fault of minim itself: a mistake of two lines .\[31m at minim/fault_test\.go:\d+, minim `+version+`, command minim version; please send this line .*\n$`, said.String())
	assert.NotContains(t, said.String(), "\x1b")
	said.Reset()
	t.Setenv("MINIM_TRACE", "1")
	assert.Equal(t, exitFault, run(context.Background(), []string{"version"}, torn{}, &said))
	assert.Contains(t, said.String(), "goroutine")
	assert.Greater(t, strings.Count(said.String(), "\n"), 5)
}
