//go:build unix

package main

import (
	"os"
	"path/filepath"
	"syscall"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/cmd/minim/demo"
)

// A file that can be read only once is read once.
func TestReportOfAPipe(t *testing.T) {
	dir := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(dir, "kit.toml"), demo.Files.Kit.Data, 0o600))
	pipe := filepath.Join(dir, "pipe")
	if err := syscall.Mkfifo(pipe, 0o600); err != nil {
		t.Skip("no pipes here: ", err)
	}
	go os.WriteFile(pipe, demo.Files.Prep.Data, 0o600) // blocks until it is read, once
	assert.Contains(t, ran(t, dir, "report", "pipe", "--kit", "kit.toml", "--trials", "10000"), "SHA-256 "+digestOf(demo.Files.Prep.Data))
}
