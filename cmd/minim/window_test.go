package main

import (
	"bytes"
	"os"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The line of progress stays within the window, also when that grows narrower, and leaves
// nothing behind in it.
func TestProgressFitsTheWindow(t *testing.T) {
	var out bytes.Buffer
	m := newMeter(&out, 0)
	m.out = &out
	for _, c := range []struct {
		window int
		want   string
	}{{80, "minim: searching routes, 12 s so far"}, {20, "minim: searching r…"}, {11, "minim: se…"}, {2, "…"}, {1, "…"}, {80, "minim: searching routes, 12 s so far"}} {
		m.window = func() int { return c.window }
		out.Reset()
		m.show("minim: searching routes, 12 s so far")
		assert.Equal(t, "\r"+c.want, out.String(), c.window)
		assert.LessOrEqual(t, utf8.RuneCountInString(c.want), max(c.window-1, 1))
	}
	m.window = func() int { return 20 }
	m.show("minim: searching routes, 12 s so far")
	out.Reset()
	m.show("short")
	assert.Equal(t, "\rshort"+strings.Repeat(" ", 14), out.String())
}

// What is no terminal has no columns.
func TestColumnsOfAFile(t *testing.T) {
	f, err := os.CreateTemp(t.TempDir(), "")
	require.NoError(t, err)
	defer f.Close()
	assert.Zero(t, columns(f))
}
