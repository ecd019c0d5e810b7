package main

import (
	"os"
	"testing"

	"github.com/stretchr/testify/require"
)

// inFolder goes into a new folder with these files, by their names.
func inFolder(t *testing.T, files map[string]string) {
	t.Helper()
	t.Chdir(t.TempDir())
	for name, text := range files {
		require.NoError(t, os.WriteFile(name, []byte(text), 0o600))
	}
}
