//go:build darwin || dragonfly || freebsd || linux || netbsd || openbsd

package main

import (
	"os"
	"syscall"
	"unsafe"
)

// columns of the window of a terminal, 0 where they are not known.
func columns(f *os.File) int {
	var size struct{ rows, columns, width, height uint16 }
	_, _, fault := syscall.Syscall(syscall.SYS_IOCTL, f.Fd(), syscall.TIOCGWINSZ, uintptr(unsafe.Pointer(&size)))
	if fault != 0 {
		return 0
	}
	return int(size.columns)
}
