package main

import (
	"os"
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestNoFigureThroughGonum: its last digits differ from machine to machine, so that it serves
// tests alone, but for comparing two floats. Pictures go through gonum/plot, another module.
func TestNoFigureThroughGonum(t *testing.T) {
	imported := regexp.MustCompile(`"gonum\.org/v1/gonum/[^"]*"`)
	codeFiles(t, func(dir, path string) {
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		for _, name := range imported.FindAllString(string(text), -1) {
			assert.Equal(t, `"gonum.org/v1/gonum/floats/scalar"`, name, path)
		}
	})
}
