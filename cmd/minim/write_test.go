package main

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func read(t *testing.T, path string) string {
	t.Helper()
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	return string(data)
}

func names(t *testing.T, dir string) (list []string) {
	t.Helper()
	entries, err := os.ReadDir(dir)
	require.NoError(t, err)
	for _, e := range entries {
		list = append(list, e.Name())
	}
	return list
}

func TestWriteAllMakesTheFolder(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "a", "b")
	require.NoError(t, writeAll(dir, []file{{"one", []byte("1")}, {"two", []byte("2")}}, false))
	assert.Equal(t, []string{"one", "two"}, names(t, dir))
	assert.Equal(t, "2", read(t, filepath.Join(dir, "two")))
}

func TestWriteAllReplacesOnlyWhenForced(t *testing.T) {
	dir := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(dir, "two"), []byte("old"), 0o644))
	files := []file{{"one", []byte("1")}, {"two", []byte("2")}}
	assert.EqualError(t, writeAll(dir, files, false), filepath.Join(dir, "two")+" exists already")
	assert.Equal(t, []string{"two"}, names(t, dir), "nothing is written beside it")
	assert.Equal(t, "old", read(t, filepath.Join(dir, "two")))
	require.NoError(t, writeAll(dir, files, true))
	assert.Equal(t, "2", read(t, filepath.Join(dir, "two")))
}

// A folder in the place of the second file is never replaced, and nothing is
// written.
func TestWriteAllNeverReplacesAFolder(t *testing.T) {
	dir := t.TempDir()
	require.NoError(t, os.MkdirAll(filepath.Join(dir, "two", "full"), 0o777))
	err := writeAll(dir, []file{{"one", []byte("1")}, {"two", []byte("2")}}, true)
	assert.EqualError(t, err, filepath.Join(dir, "two")+" is a folder")
	assert.Equal(t, []string{"two"}, names(t, dir))
}

// When a file cannot be moved into its place, those that are new are taken away
// again, an old one that was replaced stays replaced, and no temporary file
// stays.
func TestCommitThatFails(t *testing.T) {
	dir := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(dir, "old"), []byte("old"), 0o644))
	s, err := stage(dir, []file{{"new", []byte("1")}, {"old", []byte("2")}, {"three", []byte("3")}}, true)
	require.NoError(t, err)
	require.NoError(t, os.MkdirAll(filepath.Join(dir, "three", "full"), 0o777))
	assert.EqualError(t, s.commit(), "cannot write "+filepath.Join(dir, "three")+": file exists")
	s.discard()
	assert.Equal(t, []string{"old", "three"}, names(t, dir))
	assert.Equal(t, "2", read(t, filepath.Join(dir, "old")))
}

func TestWriteAllIntoAFile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "file")
	require.NoError(t, os.WriteFile(path, nil, 0o644))
	assert.EqualError(t, writeAll(path, nil, false), path+" is a file, not a folder")
}
