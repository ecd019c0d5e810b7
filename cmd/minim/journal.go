package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
)

// The names of a journal: while it is written, from then on until all files are moved,
// and while those that were moved are taken back.
const (
	draft   = "draft"
	forward = "forward"
	back    = "back"
)

// journal lists the files of a set that are moved one by one from a folder beside, so that
// a later run can complete the set when this one is killed. From the moment it is there the
// set counts as written.
type journal struct {
	beside *beside
	moves  []move
}

// move is that of one file, with the state of the file itself, and of that which it
// replaces, when the journal was written.
type move struct {
	name       string
	fresh, was state
}

// state tells whether a file has been changed by others: its size, -1 where there is none,
// and the time in ns of its last change.
type state struct{ size, time int64 }

// place is where a file is to come.
func (j *journal) place(m move) string { return filepath.Join(filepath.Dir(j.beside.path), m.name) }

// fresh and old are where a file is before it is moved, and the second name of the one
// that it replaces.
func (j *journal) fresh(m move) string { return filepath.Join(j.beside.newFiles(), m.name) }
func (j *journal) old(m move) string   { return filepath.Join(j.beside.oldFiles(), m.name) }

// stateOf is the state of what is at a path.
func stateOf(path string) state {
	info, err := os.Lstat(path)
	if err != nil {
		return state{-1, 0}
	}
	return state{info.Size(), info.ModTime().UnixNano()}
}

// moveFiles moves the files into their places. When one cannot be moved, those that are
// new are taken away again, and those that were replaced come back: they keep a second
// name until all are in place. Where the disk gives no second names they stay replaced.
func (s *staged) moveFiles() error {
	if !s.force { // or else it was looked at before
		if err := refuse(s.dir, namesOf(s.files), false); err != nil {
			return err
		}
	}
	j := &journal{beside: s.beside}
	err := onDisk.mkdir(s.beside.oldFiles())
	for _, f := range s.files {
		m := move{name: f.Name}
		if m.fresh, m.was = stateOf(j.fresh(m)), stateOf(j.place(m)); m.was.size >= 0 {
			_ = onDisk.link(j.place(m), j.old(m))
		}
		j.moves = append(j.moves, m)
	}
	if err = errors.Join(err, j.write()); err != nil {
		return fmt.Errorf("cannot write into %s: %w", s.dir, cause(err))
	}
	for _, m := range j.moves {
		if err := j.move(m); err != nil {
			j.back()
			return fmt.Errorf("cannot write %s: %w", j.place(m), cause(err))
		}
	}
	return nil
}

var errChanged = errors.New("another program has changed it in the meantime")

// move moves a file to its place, if that is as it was.
func (j *journal) move(m move) error {
	if stateOf(j.place(m)) != m.was {
		return errChanged
	}
	return onDisk.rename(j.fresh(m), j.place(m))
}

// back takes back what was moved, in whatever state it was left, but for what others have
// changed since.
func (j *journal) back() {
	_ = onDisk.rename(filepath.Join(j.beside.path, forward), filepath.Join(j.beside.path, back))
	for _, m := range slices.Backward(j.moves) {
		switch {
		case there(j.fresh(m)): // was not moved, or has come back
		case stateOf(j.place(m)) != m.fresh:
		case m.was.size < 0:
			_ = onDisk.rename(j.place(m), j.fresh(m))
		case there(j.old(m)):
			_ = onDisk.rename(j.old(m), j.place(m))
		}
	}
}

// finish moves the files that are not in their places, and lists those. Where one of them
// cannot be moved, since others have changed what it replaces, all are taken back.
func (j *journal) finish() (moved []string) {
	for _, m := range j.moves {
		if !there(j.fresh(m)) {
			continue
		}
		if j.move(m) != nil {
			j.back()
			return nil
		}
		moved = append(moved, j.place(m))
	}
	return moved
}

// write puts the journal into the folder beside, whole.
func (j *journal) write() error {
	var b strings.Builder
	for _, m := range j.moves {
		fmt.Fprintf(&b, "%d %d %d %d %s\n", m.fresh.size, m.fresh.time, m.was.size, m.was.time, strconv.Quote(m.name))
	}
	path := filepath.Join(j.beside.path, draft)
	if err := writeFile(path, []byte(b.String())); err != nil {
		return err
	}
	return onDisk.rename(path, filepath.Join(j.beside.path, forward))
}

// readJournal reads one, nil where there is none of that name, or none that this program
// has written.
func readJournal(b *beside, name string) *journal {
	data, err := os.ReadFile(filepath.Join(b.path, name))
	if err != nil {
		return nil
	}
	j := &journal{beside: b}
	for line := range strings.Lines(string(data)) {
		var m move
		if _, err := fmt.Sscanf(line, "%d %d %d %d %q\n", &m.fresh.size, &m.fresh.time, &m.was.size, &m.was.time, &m.name); err != nil || m.name != filepath.Base(m.name) {
			return nil
		}
		j.moves = append(j.moves, m)
	}
	return j
}
