//go:build unix

package main

import (
	"io/fs"
	"os"
	"syscall"
)

// ours reports whether a file belongs to the user who runs the program.
func ours(info fs.FileInfo) bool {
	stat, ok := info.Sys().(*syscall.Stat_t)
	return ok && int(stat.Uid) == os.Geteuid()
}
