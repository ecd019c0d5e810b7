package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"syscall"

	"minim/report/answer"
	"minim/report/words/clause"
)

// file is a finished output.
type file = answer.File

// staged are files that are written whole beside their places and not yet moved
// there.
type staged struct {
	dir   string
	files []file
	force bool
	// missing says what could not be drawn.
	missing []error
	// beside is the folder that they are in.
	beside *beside
	// top is the folder to be made, in which dir is or which it is; "" where dir is there.
	top string
}

// writeAll writes files into a folder, which it makes when it is not there.
// None is put in its place before all are written: a failed run leaves no new
// file and no folder. Unless force is set, it refuses to replace a file.
func writeAll(dir string, files []file, force bool) error {
	s, err := stage(dir, files, force)
	if err != nil {
		return err
	}
	defer s.discard()
	return s.commit()
}

// stage writes the files beside their places: in the folder or, where it is to be made,
// in the one that it will come into.
func stage(dir string, files []file, force bool) (*staged, error) {
	dir = filepath.Clean(dir)
	if err := refuse(dir, namesOf(files), force); err != nil {
		return nil, err
	}
	at, top, err := placeOf(dir)
	if err != nil {
		return nil, fmt.Errorf("cannot make the folder %s: %w", dir, cause(err))
	}
	s := &staged{dir: dir, files: files, force: force, top: top}
	if s.beside, err = newBeside(at); err != nil {
		return nil, fmt.Errorf("cannot write into %s: %w", at, cause(err))
	}
	if err := s.write(); err != nil {
		s.discard()
		return nil, err
	}
	return s, nil
}

// placeOf returns the folder itself, or the first above it that is there with the topmost
// that is not.
func placeOf(dir string) (at, top string, err error) {
	for at = dir; ; at = filepath.Dir(at) {
		info, err := os.Stat(at)
		switch {
		case err == nil && info.IsDir():
			return at, top, nil
		case err == nil:
			return "", "", syscall.ENOTDIR
		case at == filepath.Dir(at):
			return "", "", err
		}
		top = at
	}
}

// write writes the files into the folder beside, in as many folders as are to be made.
func (s *staged) write() error {
	in := s.beside.newFiles()
	for _, folder := range s.folders() {
		in = filepath.Join(in, folder)
		if err := onDisk.mkdir(in); err != nil {
			return fmt.Errorf("cannot make the folder %s: %w", s.dir, cause(err))
		}
	}
	for _, f := range s.files {
		if err := writeFile(filepath.Join(in, f.Name), f.Data); err != nil {
			return fmt.Errorf("cannot write %s: %w", filepath.Join(s.dir, f.Name), cause(err))
		}
	}
	return nil
}

// folders are those to be made beside: one for the files or for top, and those below top.
func (s *staged) folders() []string {
	list := []string{"."}
	if below, err := filepath.Rel(s.top, s.dir); s.top != "" && err == nil && below != "." {
		list = append(list, strings.Split(below, string(os.PathSeparator))...)
	}
	return list
}

// commit moves the files into their places: a new folder at once, files as [journal]
// does.
func (s *staged) commit() error {
	switch {
	case len(s.files) == 0:
		return nil
	case s.top == "":
		return s.moveFiles()
	}
	err := onDisk.rename(s.beside.newFiles(), s.top)
	if err == nil {
		return nil
	}
	if _, none := os.Stat(s.top); none == nil {
		return &hinted{fmt.Errorf("%s was made by another program in the meantime", s.top), "look at what is in it, and choose another name; or use --force to replace what is in it"}
	}
	return fmt.Errorf("cannot make the folder %s: %w", s.dir, cause(err))
}

// discard removes what was written and not moved.
func (s *staged) discard() {
	if s.beside != nil {
		s.beside.clear()
	}
}

func namesOf(files []file) []string {
	return clause.Each(files, func(f file) string { return f.Name })
}
