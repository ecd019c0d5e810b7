package bench

import (
	"context"
	"errors"
	"io/fs"
	"os"
	"time"
)

// ErrHeld is the error of a file whose lock another program holds.
var ErrHeld = errors.New("is held by another program")

// How often a lock is tried, and after what time it is told that it is waited for.
const (
	tryEvery  = 20 * time.Millisecond
	tellAfter = 2 * time.Second
)

// openLocked opens a file to be read and added to, with its lock, which is released when
// the file is closed; try does so where nobody holds the lock. It waits for the lock until the context is done, and calls waiting,
// if there is one, once when that takes long. The file is the one that stands at the path when it is
// locked: one that was replaced while its lock was waited for is opened again.
func openLocked(ctx context.Context, path string, waiting func(), try func(path string) (*os.File, error)) (*os.File, error) {
	long := time.NewTimer(tellAfter)
	defer long.Stop()
	for {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		file, err := try(path)
		switch {
		case err == nil && standsAt(file, path):
			return file, nil
		case err == nil:
			file.Close()
			continue
		case !errors.Is(err, ErrHeld):
			return nil, err
		}
		select {
		case <-ctx.Done():
		case <-long.C:
			if waiting != nil {
				waiting()
			}
		case <-time.After(tryEvery):
		}
	}
}

// TryLock opens a file that is not to be waited for, with its lock, which is released when
// the file is closed or the program ends. Errors: [ErrHeld], and fs.ErrNotExist where no
// file is there, or no longer.
func TryLock(path string) (*os.File, error) {
	file, err := tryLocked(path)
	if err == nil && !standsAt(file, path) {
		file.Close()
		return nil, fs.ErrNotExist
	}
	return file, err
}

// standsAt reports whether a path leads to an open file. One that leads nowhere is told
// when it is opened again.
func standsAt(file *os.File, path string) bool {
	opened, err := file.Stat()
	if err != nil {
		return false
	}
	now, err := os.Stat(path)
	return err == nil && os.SameFile(opened, now)
}
