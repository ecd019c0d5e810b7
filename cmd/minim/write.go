package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
)

// disk is what files are written on; a test puts one that fails in its place.
type disk interface {
	createTemp(dir, pattern string) (temporary, error)
	rename(from, to string) error
	// link gives a file a second name.
	link(from, to string) error
}

// temporary is a file that is being written.
type temporary interface {
	Name() string
	Write(data []byte) (int, error)
	Chmod(mode fs.FileMode) error
	Sync() error
	Close() error
}

type realDisk struct{}

func (realDisk) createTemp(dir, pattern string) (temporary, error) {
	return os.CreateTemp(dir, pattern)
}
func (realDisk) rename(from, to string) error { return os.Rename(from, to) }
func (realDisk) link(from, to string) error   { return os.Link(from, to) }

var onDisk disk = realDisk{}

// file is a finished output.
type file struct {
	name string
	data []byte
}

// staged are files that are written whole beside their places and not yet moved
// there.
type staged struct {
	dir       string
	files     []file
	temporary []string
	// missing says what could not be drawn.
	missing []string
}

// writeAll writes files into a folder, which it makes when it is not there.
// None is put in its place before all are written: a failed run leaves no new
// file. Unless force is set, it refuses to replace a file.
func writeAll(dir string, files []file, force bool) error {
	s, err := stage(dir, files, force)
	if err != nil {
		return err
	}
	defer s.discard()
	return s.commit()
}

// stage writes the files beside their places.
func stage(dir string, files []file, force bool) (*staged, error) {
	if err := refuseFile(dir); err != nil {
		return nil, err
	}
	if err := os.MkdirAll(dir, 0o777); err != nil {
		return nil, fmt.Errorf("cannot make the folder %s: %w", dir, cause(err))
	}
	if err := refuseExisting(dir, files, force); err != nil {
		return nil, err
	}
	s := &staged{dir: dir, files: files}
	for _, f := range files {
		name, err := writeTemporary(dir, f)
		if err != nil {
			s.discard()
			return nil, fmt.Errorf("cannot write %s: %w", filepath.Join(dir, f.name), cause(err))
		}
		s.temporary = append(s.temporary, name)
	}
	return s, nil
}

// deliver prints a result, and then puts files that are staged in their places.
func (c console) deliver(printed []byte, kept *staged) error {
	defer kept.discard()
	if _, err := c.out.Write(printed); err != nil {
		return err
	}
	if err := kept.commit(); err != nil || len(kept.files) == 0 {
		return err
	}
	for _, text := range kept.missing {
		tell(c.err, "%s", text)
	}
	tell(c.err, "wrote %s into %s", kept.names(), kept.dir)
	return nil
}

// names lists the files: a, b and c.
func (s *staged) names() string {
	names := make([]string, len(s.files))
	for i, f := range s.files {
		names[i] = f.name
	}
	return joined(names, "and")
}

// discard removes what was written and not moved.
func (s *staged) discard() {
	for _, name := range s.temporary {
		os.Remove(name)
	}
}

// commit moves the files into their places. When one cannot be moved, those that are
// new are taken away again, and those that were replaced come back: they keep a second
// name until all are in place. Where the disk gives no second names they stay replaced.
func (s *staged) commit() error {
	var undo []func()
	for i, f := range s.files {
		path, kept := filepath.Join(s.dir, f.name), s.temporary[i]+".old"
		_, err := os.Lstat(path)
		isNew := errors.Is(err, fs.ErrNotExist)
		isKept := !isNew && onDisk.link(path, kept) == nil
		if isKept {
			defer os.Remove(kept)
		}
		if err := onDisk.rename(s.temporary[i], path); err != nil {
			for _, back := range undo {
				back()
			}
			return fmt.Errorf("cannot write %s: %w", path, cause(err))
		}
		switch {
		case isNew:
			undo = append(undo, func() { os.Remove(path) })
		case isKept:
			undo = append(undo, func() { os.Rename(kept, path) })
		}
	}
	return nil
}

// refuseFile refuses a folder in whose place a file stands.
func refuseFile(dir string) error {
	if info, err := os.Stat(dir); err == nil && !info.IsDir() {
		return &hinted{fmt.Errorf("%s is a file, not a folder", dir), "name another folder"}
	}
	return nil
}

// refuseExisting refuses to replace a file without force, and a folder always.
func refuseExisting(dir string, files []file, force bool) error {
	for _, f := range files {
		path := filepath.Join(dir, f.name)
		info, err := os.Lstat(path)
		switch {
		case err != nil:
		case info.IsDir():
			return &hinted{fmt.Errorf("%s is a folder", path), "name another folder for the files"}
		case !force:
			return &hinted{fmt.Errorf("%s exists already", path), "choose another name or folder, or use --force to replace it"}
		}
	}
	return nil
}

func writeTemporary(dir string, f file) (name string, err error) {
	t, err := onDisk.createTemp(dir, ".minim-*")
	if err != nil {
		return "", err
	}
	_, err = t.Write(f.data)
	err = errors.Join(err, t.Chmod(0o644), t.Sync(), t.Close())
	if err != nil {
		os.Remove(t.Name())
	}
	return t.Name(), err
}

// cause strips the operation and the name of a temporary file from an error.
func cause(err error) error {
	var path *fs.PathError
	if errors.As(err, &path) {
		return path.Err
	}
	var link *os.LinkError
	if errors.As(err, &link) {
		return link.Err
	}
	return err
}
