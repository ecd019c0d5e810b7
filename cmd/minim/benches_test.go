package main

import (
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/report/words/glance"
)

// TestBenches runs the invented benches of testdata/benches, of different
// kinds, and compares the first screen, in windows of several widths, and the whole one with what is
// kept beside each.
func TestBenches(t *testing.T) {
	skipIfSlow(t)
	preps, err := filepath.Glob("../../testdata/benches/*/*.toml")
	require.NoError(t, err)
	benches := 0
	for _, prep := range preps {
		if filepath.Base(prep) == "bench.toml" {
			assert.Contains(t, output(t, "kit", prep), "invented")
			continue
		}
		benches++
		golden, args := strings.TrimSuffix(prep, ".toml"), []string{"compare", prep, "--trials", "20000"}
		for _, columns := range widths {
			got := inWindow(t, columns, args...)
			file := golden + "-" + strconv.Itoa(columns) + ".txt"
			if columns == glance.Columns {
				file = golden + ".txt"
			}
			kept(t, file, got)
			atAGlance(t, got, columns, args...)
			assert.Contains(t, got, "invented")
		}
		kept(t, golden+"-all.txt", output(t, append(args, "--all")...))
	}
	assert.GreaterOrEqual(t, benches, 6)
}
