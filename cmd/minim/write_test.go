package main

import (
	"errors"
	"io/fs"
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
	require.NoError(t, writeAll(dir, []file{{Name: "one", Data: []byte("1")}, {Name: "two", Data: []byte("2")}}, false))
	assert.Equal(t, []string{"one", "two"}, names(t, dir))
	assert.Equal(t, "2", read(t, filepath.Join(dir, "two")))
}

func TestWriteAllReplacesOnlyWhenForced(t *testing.T) {
	dir := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(dir, "two"), []byte("old"), 0o644))
	files := []file{{Name: "one", Data: []byte("1")}, {Name: "two", Data: []byte("2")}}
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
	err := writeAll(dir, []file{{Name: "one", Data: []byte("1")}, {Name: "two", Data: []byte("2")}}, true)
	assert.EqualError(t, err, filepath.Join(dir, "two")+" is a folder")
	assert.Equal(t, []string{"two"}, names(t, dir))
}

// When a file cannot be moved into its place, those that are new are taken away
// again, an old one that was replaced comes back, and no temporary file stays.
func TestCommitThatFails(t *testing.T) {
	dir := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(dir, "old"), []byte("old"), 0o644))
	s, err := stage(dir, []file{{Name: "new", Data: []byte("1")}, {Name: "old", Data: []byte("2")}, {Name: "three", Data: []byte("3")}}, true)
	require.NoError(t, err)
	require.NoError(t, os.MkdirAll(filepath.Join(dir, "three", "full"), 0o777))
	assert.EqualError(t, s.commit(), "cannot write "+filepath.Join(dir, "three")+": file exists")
	s.discard()
	assert.Equal(t, []string{"old", "three"}, names(t, dir))
	assert.Equal(t, "old", read(t, filepath.Join(dir, "old")))
}

// failingDisk fails at one of its operations, counted from 0.
type failingDisk struct {
	realDisk
	at, done int
}

var errDisk = errors.New("the disk is broken")

func (d *failingDisk) step() error {
	d.done++
	if d.done-1 == d.at {
		return errDisk
	}
	return nil
}

func (d *failingDisk) mkdirTemp(dir, pattern string) (string, error) {
	if err := d.step(); err != nil {
		return "", err
	}
	return d.realDisk.mkdirTemp(dir, pattern)
}

func (d *failingDisk) mkdir(path string) error {
	if err := d.step(); err != nil {
		return err
	}
	return d.realDisk.mkdir(path)
}

func (d *failingDisk) create(path string) (temporary, error) {
	if err := d.step(); err != nil {
		return nil, err
	}
	t, err := d.realDisk.create(path)
	return failingFile{t, d}, err
}

func (d *failingDisk) rename(from, to string) error {
	if err := d.step(); err != nil {
		return err
	}
	return d.realDisk.rename(from, to)
}

type failingFile struct {
	temporary
	disk *failingDisk
}

func (f failingFile) Write(data []byte) (int, error) {
	if err := f.disk.step(); err != nil {
		n, _ := f.temporary.Write(data[:len(data)/2])
		return n, err
	}
	return f.temporary.Write(data)
}

func (f failingFile) Chmod(mode fs.FileMode) error {
	return errors.Join(f.temporary.Chmod(mode), f.disk.step())
}
func (f failingFile) Sync() error  { return errors.Join(f.temporary.Sync(), f.disk.step()) }
func (f failingFile) Close() error { return errors.Join(f.temporary.Close(), f.disk.step()) }

// Whatever operation of the disk fails, the files that were there stay as they were, new
// ones are absent, and nothing temporary stays. When none fails, all are there.
func TestEveryFailureOfTheDisk(t *testing.T) {
	defer func() { onDisk = realDisk{} }()
	written := []file{{Name: "fresh", Data: []byte("a new text")}, {Name: "old", Data: []byte("a newer text")}}
	for at := 0; ; at++ {
		dir := t.TempDir()
		require.NoError(t, os.WriteFile(filepath.Join(dir, "old"), []byte("old"), 0o644))
		d := &failingDisk{at: at}
		onDisk = d
		err := writeAll(dir, written, true)
		if d.done <= at {
			require.NoError(t, err)
			assert.Equal(t, []string{"fresh", "old"}, names(t, dir))
			assert.Equal(t, 26, at, "three folders; create, write, mode, sync and close of a lock, two files and a journal; rename of all but the lock")
			return
		}
		require.ErrorIs(t, err, errDisk, at)
		assert.Equal(t, []string{"old"}, names(t, dir), at)
		assert.Equal(t, "old", read(t, filepath.Join(dir, "old")), at)
	}
}

func TestWriteAllIntoAFile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "file")
	require.NoError(t, os.WriteFile(path, nil, 0o644))
	assert.EqualError(t, writeAll(path, nil, false), path+" is a file, not a folder")
}
