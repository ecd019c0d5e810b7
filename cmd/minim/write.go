package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
)

// file is a finished output.
type file struct {
	name string
	data []byte
}

// writeAll writes files into a folder, which it makes when it is not there.
// Each is written whole beside its place and then moved there, and none before
// all are written: a failed run leaves no new file. Unless force is set, it
// refuses to replace a file.
func writeAll(dir string, files []file, force bool) (err error) {
	if err := os.MkdirAll(dir, 0o777); err != nil {
		return fmt.Errorf("cannot make the folder %s: %w", dir, cause(err))
	}
	if !force {
		if err := refuseExisting(dir, files); err != nil {
			return err
		}
	}
	temporary := make([]string, 0, len(files))
	defer func() {
		for _, name := range temporary {
			os.Remove(name)
		}
	}()
	for _, f := range files {
		name, err := writeTemporary(dir, f)
		if err != nil {
			return fmt.Errorf("cannot write %s: %w", filepath.Join(dir, f.name), cause(err))
		}
		temporary = append(temporary, name)
	}
	return moveAll(dir, files, temporary)
}

func refuseExisting(dir string, files []file) error {
	for _, f := range files {
		path := filepath.Join(dir, f.name)
		if _, err := os.Lstat(path); err == nil {
			return &hinted{fmt.Errorf("%s exists already", path), "name another folder, or use --force to replace it"}
		}
	}
	return nil
}

func writeTemporary(dir string, f file) (name string, err error) {
	t, err := os.CreateTemp(dir, ".minim-*")
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

// moveAll puts the files in their places; when one cannot be put there, those
// before it are taken away again.
func moveAll(dir string, files []file, temporary []string) error {
	for i, f := range files {
		path := filepath.Join(dir, f.name)
		if err := os.Rename(temporary[i], path); err != nil {
			for _, done := range files[:i] {
				os.Remove(filepath.Join(dir, done.name))
			}
			return fmt.Errorf("cannot write %s: %w", path, cause(err))
		}
	}
	return nil
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
