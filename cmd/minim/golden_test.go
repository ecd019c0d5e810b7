package main

import (
	"os"
	"path/filepath"
	"runtime"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// rounded files hold no number in full precision.
var rounded = map[string]bool{".txt": true, ".md": true}

// TestDemoOutputs compares what compare keeps of the demo, of the batch, and the pictures
// of plan and buy, with testdata/demo.
// Other processors may round a last digit otherwise, so that the full precision
// is compared on one kind only.
func TestDemoOutputs(t *testing.T) {
	golden, err := filepath.Abs("../../testdata/demo")
	require.NoError(t, err)
	t.Chdir(t.TempDir())
	output(t, "plan", "--steps", "2", "--trials", "10000", "--out", "results")
	output(t, "buy", "--steps", "1", "--trials", "10000", "--out", "results")
	output(t, "made", "--trials", "100000", "--out", "results")
	output(t, "compare", "--out", "results", "--force")
	for _, name := range []string{
		"compare.txt", "compare.json", "compare.md", "compare.csv", "spread.svg", "budget.svg", "routes.svg", "readability.svg",
		"made.txt", "made.json", "made.md", "made.csv", "made.svg",
	} {
		if !rounded[filepath.Ext(name)] && runtime.GOARCH != "amd64" {
			continue
		}
		got := read(t, filepath.Join("results", name))
		if *update {
			require.NoError(t, os.WriteFile(filepath.Join(golden, name), []byte(got), 0o644))
		}
		assert.True(t, read(t, filepath.Join(golden, name)) == got, "%s differs; look at it, and run with -update", name)
	}
}
