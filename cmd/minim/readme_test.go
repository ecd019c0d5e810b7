package main

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// thorough is false under the race detector.
var thorough = true

// skipIfSlow leaves out under the race detector what takes long there, in the way of other tests
// or on one processor.
func skipIfSlow(t *testing.T) {
	t.Helper()
	if !thorough {
		t.Skip("run without the race detector")
	}
}

const readme = "../../README.md"

// TestReadmeSessions runs every command of the sessions in README.md, in order
// and in one empty folder, and compares what is shown below each. A session is
// a block fenced with ```console. The commands are minim's; the one that passes
// the tests is run by the continuous integration, which reads it from README.
func TestReadmeSessions(t *testing.T) {
	skipIfSlow(t)
	data, err := os.ReadFile(readme)
	require.NoError(t, err)
	path, err := filepath.Abs(readme)
	require.NoError(t, err)
	t.Chdir(t.TempDir())
	before, rest := "", string(data)
	ran := 0
	for {
		text, session, after, ok := cutSession(rest)
		if !ok {
			break
		}
		before += text + "```console\n" + runSession(t, session, &ran) + "```\n"
		rest = after
	}
	if *update {
		require.NoError(t, os.WriteFile(path, []byte(before+rest), 0o644))
	}
	assert.GreaterOrEqual(t, ran, 3, "README shows too few commands")
}

func cutSession(text string) (before, session, after string, ok bool) {
	before, rest, ok := strings.Cut(text, "```console\n")
	if !ok {
		return "", "", "", false
	}
	session, after, ok = strings.Cut(rest, "```\n")
	return before, session, after, ok
}

// asLongAs cuts what is printed after as many lines as are shown, where these end in a
// line of three dots.
func asLongAs(shown, printed string) string {
	lines := strings.Split(shown, "\n")
	if last := len(lines) - 1; lines[last] == "..." {
		return strings.Join(append(strings.Split(printed, "\n")[:last], "..."), "\n")
	}
	return printed
}

// runSession runs the commands of a session and returns it with what they
// really print. A command with nothing below it may print anything.
func runSession(t *testing.T, session string, ran *int) string {
	var whole strings.Builder
	for i, part := range strings.Split("\n"+session, "\n$ ") {
		if i == 0 {
			assert.Empty(t, strings.TrimSpace(part), "a session starts with a command")
			continue
		}
		line, shown, _ := strings.Cut(part+"\n", "\n")
		shown = strings.TrimRight(shown, "\n")
		whole.WriteString("$ " + line + "\n")
		args, ok := strings.CutPrefix(line, "go run ./cmd/minim")
		if !ok {
			assert.Equal(t, "go test ./...", line, "README shows a command that no test runs")
			continue
		}
		var out, errs bytes.Buffer
		code := run(context.Background(), split(t, args), &out, &errs)
		*ran++
		assert.Equal(t, 0, code, "%s: %s", line, errs.String())
		if shown == "" {
			continue
		}
		real := asLongAs(shown, strings.TrimRight(out.String(), "\n"))
		if !*update {
			sameText(t, shown, real, line)
		}
		whole.WriteString(real + "\n")
	}
	return whole.String()
}

// TestExampleFiles runs the kit, the prep and the record that FILES.md shows, as a new user
// would type them in.
func TestExampleFiles(t *testing.T) {
	text := read(t, documentation)
	t.Chdir(t.TempDir())
	for _, name := range []string{"bench.toml", "prep.toml", "batch.toml"} {
		_, rest, ok := strings.Cut(text, "```toml\n")
		require.True(t, ok, "%s shows no %s", documentation, name)
		file, after, ok := strings.Cut(rest, "```\n")
		require.True(t, ok)
		require.NoError(t, os.WriteFile(name, []byte(file), 0o644))
		text = after
	}
	assert.Contains(t, output(t, "kit", "bench.toml"), "25 mL flask")
	assert.Contains(t, output(t, "compare", "prep.toml", "--trials", "10000"), "\nUSE ")
	assert.Contains(t, output(t, "made", "prep.toml", "batch.toml", "--trials", "10000"), "1.73 g in place of 1.75 g")
}
