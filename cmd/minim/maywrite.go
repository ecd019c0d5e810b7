package main

import (
	"fmt"
	"os"
	"path/filepath"
)

// mayWrite refuses what [refuse] does, before anything is worked out for it. What an
// earlier run left behind is finished first.
func (c console) mayWrite(dir string, force bool, names ...string) error {
	for _, path := range finishEarlier(dir) {
		tell(c.err, "wrote %s, which an earlier run had begun and was killed at", path)
	}
	return refuse(filepath.Clean(dir), names, force)
}

// mayReplace is that for one file, named by an option or an argument, that must be none of those
// that are read.
func (c console) mayReplace(what, path string, force bool, read ...string) error {
	if err := refuseRead(what, path, read...); err != nil {
		return err
	}
	dir, name := filepath.Split(path)
	return c.mayWrite(dir, force, name)
}

// refuse refuses a folder in whose place a file stands, and to replace a file without
// force, and a folder always.
func refuse(dir string, names []string, force bool) error {
	if info, err := os.Stat(dir); err == nil && !info.IsDir() {
		return &hinted{fmt.Errorf("%s is a file, not a folder", dir), "name another folder"}
	}
	for _, name := range names {
		path := filepath.Join(dir, name)
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

// refuseRead refuses to write, by an option or an argument, over a file that is read.
func refuseRead(what, path string, read ...string) error {
	info, err := os.Stat(filepath.Clean(path)) // which is where it would be written
	if err != nil {
		return nil // nothing is there
	}
	for _, name := range read {
		if other, err := os.Stat(name); err == nil && os.SameFile(info, other) {
			return &usageError{fmt.Sprintf("%s would replace %s, which is read", what, name), "choose another name"}
		}
	}
	return nil
}
