//go:build !(darwin || dragonfly || freebsd || illumos || linux || netbsd || openbsd || windows)

package bench

import (
	"errors"
	"os"
	"runtime"
)

// tryLocked fails: two processes that add at once could not be kept apart.
func tryLocked(string) (*os.File, error) {
	return nil, errors.New("records cannot be added to on " + runtime.GOOS + ", where a file cannot be locked")
}
