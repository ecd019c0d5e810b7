//go:build darwin || dragonfly || freebsd || illumos || linux || netbsd || openbsd

package record

import (
	"fmt"
	"os"
	"syscall"
)

// openLocked opens a file to be read and added to, and waits until nobody else holds
// its lock, which is released when the file is closed.
func openLocked(path string) (*os.File, error) {
	file, err := os.OpenFile(path, os.O_RDWR|os.O_APPEND, 0)
	if err != nil {
		return nil, err
	}
	for {
		err = syscall.Flock(int(file.Fd()), syscall.LOCK_EX)
		if err == nil {
			return file, nil
		}
		if err != syscall.EINTR {
			file.Close()
			return nil, fmt.Errorf("cannot be locked: %w", err)
		}
	}
}
