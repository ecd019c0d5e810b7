package main

import (
	"errors"
	"io/fs"
	"os"
)

// disk is what files are written on; a test puts one that fails in its place.
type disk interface {
	mkdirTemp(dir, pattern string) (string, error)
	mkdir(path string) error
	create(path string) (temporary, error)
	rename(from, to string) error
	// link gives a file a second name.
	link(from, to string) error
	// remove removes a file, or a folder with all that is in it.
	remove(path string) error
}

// temporary is a file that is being written.
type temporary interface {
	Write(data []byte) (int, error)
	Chmod(mode fs.FileMode) error
	Sync() error
	Close() error
}

type realDisk struct{}

func (realDisk) mkdirTemp(dir, pattern string) (string, error) { return os.MkdirTemp(dir, pattern) }
func (realDisk) mkdir(path string) error                       { return os.Mkdir(path, 0o777) }
func (realDisk) create(path string) (temporary, error) {
	return os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
}
func (realDisk) rename(from, to string) error { return os.Rename(from, to) }
func (realDisk) link(from, to string) error   { return os.Link(from, to) }
func (realDisk) remove(path string) error     { return os.RemoveAll(path) }

var onDisk disk = realDisk{}

// writeFile writes a new file whole.
func writeFile(path string, data []byte) error {
	t, err := onDisk.create(path)
	if err != nil {
		return err
	}
	_, err = t.Write(data)
	return errors.Join(err, t.Chmod(0o644), t.Sync(), t.Close())
}

// there reports whether something stands at a path.
func there(path string) bool {
	_, err := os.Lstat(path)
	return err == nil
}

// cause strips the operation and the names of files from an error.
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
