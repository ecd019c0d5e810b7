package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// compareJSON runs compare and reads what it prints.
func compareJSON(t *testing.T, args ...string) map[string]any {
	t.Helper()
	var whole map[string]any
	text := output(t, append([]string{"compare", "--format", "json", "--trials", "10000"}, args...)...)
	require.NoError(t, json.Unmarshal([]byte(text), &whole))
	return whole
}

// The comparison with a change is that on a kit whose file says so, and the one
// before is that on the kit as it is (constructed): to the last digit, since one
// seed gives one set of draws.
func TestChangeComparesAsTheFileWould(t *testing.T) {
	skipIfSlow(t)
	t.Chdir(t.TempDir())
	output(t, "new", "asitis")
	output(t, "new", "edited")
	kit := read(t, filepath.Join("edited", "bench.toml"))
	const old, edited = `repeatability = "0.01 g"`, `repeatability = "0.002 g"`
	require.Equal(t, 1, strings.Count(kit, old))
	require.NoError(t, os.WriteFile(filepath.Join("edited", "bench.toml"), []byte(strings.Replace(kit, old, edited, 1)), 0o644))

	const change = "0.01 g scale: repeatability = 0.002 g"
	got := compareJSON(t, "asitis/dye.toml", "--change", "  "+change)
	assert.Equal(t, any([]any{change}), got["changes"])
	assert.Equal(t, compareJSON(t, "edited/dye.toml")["routes"], got["routes"])
	assert.Equal(t, any(compareJSON(t, "asitis/dye.toml")), got["before"])
	assert.Equal(t, kit, read(t, filepath.Join("asitis", "bench.toml")), "the file stays as it is")

	ofKit := compareJSON(t, "asitis/dye.toml", "--kit", "asitis/bench.toml", "--change", change)
	assert.Equal(t, got["routes"], ofKit["routes"])
	ofDemo := compareJSON(t, "--change", change)
	assert.Equal(t, got["routes"], ofDemo["routes"])
	assert.Equal(t, any([]any{change}), ofDemo["changes"])
}

// Without the option, nothing is said of changes.
func TestWithoutChange(t *testing.T) {
	whole := compareJSON(t)
	assert.Equal(t, any([]any{}), whole["changes"])
	before, there := whole["before"]
	assert.True(t, there)
	assert.Nil(t, before)
	for _, format := range []string{"text", "markdown", "csv"} {
		text := output(t, "compare", "--trials", "10000", "--format", format)
		assert.NotContains(t, strings.ToLower(text), "change", format)
		assert.NotContains(t, text, "as it is", format)
	}
}
