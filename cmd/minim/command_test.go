package main

import (
	"bytes"
	"context"
	"flag"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

var update = flag.Bool("update", false, "rewrite the expected outputs in testdata and in README.md")

// TestCommands runs every archive of testdata/commands in a folder of its own
// and compares exit code, both outputs and the files that are there afterwards. Under the
// race detector a quarter is enough: they share one way of working on several processors.
func TestCommands(t *testing.T) {
	paths, err := filepath.Glob("../../testdata/commands/*.txt")
	require.NoError(t, err)
	require.NotEmpty(t, paths)
	for i, path := range paths {
		if !thorough && i%4 > 0 {
			continue
		}
		absolute, err := filepath.Abs(path)
		require.NoError(t, err)
		t.Run(strings.TrimSuffix(filepath.Base(path), ".txt"), func(t *testing.T) {
			runArchive(t, readArchive(t, absolute))
		})
	}
}

func runArchive(t *testing.T, a *archive) {
	require.NotEmpty(t, a.commands, "the archive has no line that starts with $ minim")
	t.Chdir(t.TempDir())
	for _, s := range a.sections {
		if !slices.Contains(expected, s.name) {
			name, data := s.bytes(t)
			require.NoError(t, os.MkdirAll(filepath.Dir(name), 0o777))
			require.NoError(t, os.WriteFile(name, data, 0o644))
		}
	}
	var out, errs bytes.Buffer
	var codes []string
	for _, command := range a.commands {
		codes = append(codes, fmt.Sprintln(run(context.Background(), split(t, command), &out, &errs)))
	}
	found := map[string]string{
		"exit": strings.Join(codes, ""), "stdout": out.String(), "stderr": errs.String(), "files": filesHere(t),
	}
	for _, name := range expected {
		if missing, ok := follows(a.get(name), found[name]); ok {
			continue
		} else if !*update {
			t.Errorf("%s does not go on with\n%s", name, missing)
			sameText(t, a.get(name), thinned(a.get(name), found[name]), name)
		}
		a.set(name, thinned(a.get(name), found[name]))
	}
	if *update {
		a.write(t)
	}
}

// filesHere lists the files below the working folder, one a line.
func filesHere(t *testing.T) string {
	var list strings.Builder
	err := filepath.WalkDir(".", func(path string, d fs.DirEntry, err error) error {
		if err == nil && !d.IsDir() {
			fmt.Fprintln(&list, filepath.ToSlash(path))
		}
		return err
	})
	require.NoError(t, err)
	return list.String()
}

// split breaks a command line at spaces; double quotes keep a word together.
func split(t *testing.T, line string) []string {
	t.Helper()
	var words []string
	for i, part := range strings.Split(line, `"`) {
		if i%2 == 1 {
			words = append(words, part)
			continue
		}
		words = append(words, strings.Fields(part)...)
	}
	require.Zero(t, strings.Count(line, `"`)%2, "a quote is not closed: %s", line)
	return words
}
