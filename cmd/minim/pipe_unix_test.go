//go:build unix

package main

import (
	"os"
	"strings"
	"syscall"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// piped gives a file once, as a pipe does.
func piped(t *testing.T, name, text string) string {
	t.Helper()
	require.NoError(t, syscall.Mkfifo(name, 0o600))
	go func() { _ = os.WriteFile(name, []byte(text), 0o600) }()
	return name
}

// Every file is read once, so that a pipe does as well.
func TestFilesAreReadOnce(t *testing.T) {
	t.Chdir(t.TempDir())
	prep := strings.ReplaceAll(hydratePrep, `kit = "kit.toml"`, `kit = "kept.toml"`) + rightRoute
	require.NoError(t, os.WriteFile("kept.toml", []byte(planKit), 0o644))
	changed := output(t, "compare", piped(t, "a", prep), "--kit", piped(t, "k", planKit), "--change", "scale: readability = 0.001 g", "--trials", "20000", "--all")
	assert.Contains(t, changed, "What the change")
	output(t, "plan", piped(t, "b", prep), "--steps", "0", "--trials", "20000", "--save", "saved.toml")
	saved, err := os.ReadFile("saved.toml")
	require.NoError(t, err)
	assert.Contains(t, string(saved), `weighed-as = "citrate dihydrate"`)
	assert.Contains(t, string(saved), "[[route]]")
}
