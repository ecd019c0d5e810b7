//go:build darwin || dragonfly || freebsd || illumos || linux || netbsd || openbsd

package bench

import (
	"fmt"
	"os"
	"syscall"
)

// tryLocked opens a file to be read and added to, with its lock, which is released when
// the file is closed. The error is ErrHeld when another program holds the lock.
func tryLocked(path string) (*os.File, error) {
	file, err := os.OpenFile(path, os.O_RDWR|os.O_APPEND, 0)
	if err != nil {
		return nil, err
	}
	for {
		err = syscall.Flock(int(file.Fd()), syscall.LOCK_EX|syscall.LOCK_NB)
		switch {
		case err == nil:
			return file, nil
		case err == syscall.EINTR:
			continue
		case err == syscall.EWOULDBLOCK:
			err = ErrHeld
		default:
			err = fmt.Errorf("cannot be locked: %w", err)
		}
		file.Close()
		return nil, err
	}
}
