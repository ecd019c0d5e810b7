package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestBenches runs the invented benches of testdata/benches, of different
// kinds, and compares the first screen with what is kept beside each.
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
		golden := strings.TrimSuffix(prep, ".toml") + ".txt"
		got := output(t, "compare", prep, "--trials", "20000")
		if *update {
			require.NoError(t, os.WriteFile(golden, []byte(got), 0o644))
		}
		sameText(t, read(t, golden), got, golden+" (read it aloud, and run with -update)")
		assert.Contains(t, got, "invented")
	}
	assert.GreaterOrEqual(t, benches, 6)
}
