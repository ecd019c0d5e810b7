package main

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/cmd/minim/demo"
)

// ran runs a command line in a folder and returns what it printed.
func ran(t *testing.T, dir string, args ...string) string {
	t.Helper()
	t.Chdir(dir)
	var out, failed strings.Builder
	require.Equal(t, exitDone, run(context.Background(), args, &out, &failed), failed.String())
	return out.String()
}

func digestOf(data []byte) string {
	sum := sha256.Sum256(data)
	return hex.EncodeToString(sum[:])
}

// The user's own files may go by the names of the demo's: the digests are of their bytes.
func TestReportPrintsTheDigestOfWhatWasRead(t *testing.T) {
	dir := t.TempDir()
	kit, prep := slices.Concat(demo.Files.Kit.Data, []byte("\n# my own\n")), slices.Concat(demo.Files.Prep.Data, []byte("\n# my own\n"))
	require.NoError(t, os.WriteFile(filepath.Join(dir, demo.Files.Kit.Name), kit, 0o600))
	require.NoError(t, os.WriteFile(filepath.Join(dir, demo.Files.Prep.Name), prep, 0o600))
	text := ran(t, dir, "report", demo.Files.Prep.Name, "--trials", "10000")
	for _, own := range [][]byte{kit, prep} {
		assert.Contains(t, text, "SHA-256 "+digestOf(own))
	}
	for _, others := range [][]byte{demo.Files.Kit.Data, demo.Files.Prep.Data} {
		assert.NotContains(t, text, digestOf(others))
	}
	assert.Contains(t, ran(t, dir, "report", "--trials", "10000"), "SHA-256 "+digestOf(demo.Files.Prep.Data))
}
