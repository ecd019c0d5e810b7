package main

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestNoFigureThroughGonum: its last digits differ from machine to machine, so that it serves
// tests alone. Pictures go through gonum/plot, which is another module.
func TestNoFigureThroughGonum(t *testing.T) {
	codeFiles(t, func(dir, path string) {
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		if dir != "uncertainty/near" {
			assert.False(t, strings.Contains(string(text), `"gonum.org/v1/gonum/`), path)
		}
	})
}
