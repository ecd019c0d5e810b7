package main

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"minim/uncertainty/bench"
)

// besideName is what the names of folders start with that files are written in before
// they are moved.
const besideName = ".minim-"

// beside is a folder of files that are to be moved into the folder that it stands in:
// the new ones in "new", and second names of those that they replace in "old". Its lock
// is held as long as the program that made it lives.
type beside struct {
	path string
	lock *os.File // nil where a file cannot be locked
}

func (b *beside) newFiles() string { return filepath.Join(b.path, "new") }
func (b *beside) oldFiles() string { return filepath.Join(b.path, "old") }
func (b *beside) lockFile() string { return filepath.Join(b.path, "lock") }

// newBeside makes one in a folder. Another program that looks for those without a lock
// may take it away before it has one: then it makes another.
func newBeside(at string) (*beside, error) {
	var taken error
	for range 100 {
		path, err := onDisk.mkdirTemp(at, besideName+"*")
		if err != nil {
			return nil, err
		}
		b := &beside{path: path}
		if taken = b.hold(); taken == nil {
			return b, nil
		}
		b.clear()
		if !errors.Is(taken, fs.ErrNotExist) && !errors.Is(taken, bench.ErrHeld) {
			break
		}
	}
	return nil, taken
}

// hold makes the lock and takes it, where the disk has locks.
func (b *beside) hold() (err error) {
	if err = writeFile(b.lockFile(), nil); err != nil {
		return err
	}
	b.lock, err = bench.TryLock(b.lockFile())
	if errors.Is(err, fs.ErrNotExist) || errors.Is(err, bench.ErrHeld) {
		return err
	}
	return nil
}

// clear removes the folder with all that is in it, the journals first: without one
// nothing of it counts.
func (b *beside) clear() {
	for _, name := range []string{forward, back, draft, "new", "old"} {
		if path := filepath.Join(b.path, name); there(path) {
			onDisk.remove(path)
		}
	}
	if b.lock != nil {
		b.lock.Close()
	}
	onDisk.remove(b.path)
}

// finishEarlier looks, in a folder and those above it, for what runs before this one left
// beside their files when they were killed. A set of which a part may have been moved is
// completed or, where it was being taken back, taken back; all else is removed. It
// returns the files that it has moved. What belongs to a program that still runs, or to
// another user, is left alone.
func finishEarlier(dir string) (moved []string) {
	for at := filepath.Clean(dir); ; at = filepath.Dir(at) {
		entries, _ := os.ReadDir(at)
		for _, e := range entries {
			if e.IsDir() && strings.HasPrefix(e.Name(), besideName) {
				moved = append(moved, finishBeside(filepath.Join(at, e.Name()))...)
			}
		}
		if at == filepath.Dir(at) {
			return moved
		}
	}
}

// finishBeside finishes one folder.
func finishBeside(path string) (moved []string) {
	info, err := os.Lstat(path)
	if err != nil || !info.IsDir() || !ours(info) {
		return nil
	}
	b := &beside{path: path}
	switch b.lock, err = bench.TryLock(b.lockFile()); {
	case errors.Is(err, fs.ErrNotExist):
		os.Remove(path) // does so where it is empty: it was only just made, or all but gone
		return nil
	case err != nil:
		return nil
	}
	if j := readJournal(b, back); j != nil {
		j.back()
	} else if j := readJournal(b, forward); j != nil {
		moved = j.finish()
	}
	b.clear()
	return moved
}
