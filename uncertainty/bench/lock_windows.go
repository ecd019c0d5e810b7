package bench

import (
	"os"
	"syscall"
)

// errSharing is the error of a file that another has open.
const errSharing = syscall.Errno(32)

// tryLocked opens a file to be read and added to, so that nobody else can open it until
// it is closed. It is added to where the reading ends. The error is ErrHeld when another
// program has it open.
func tryLocked(path string) (*os.File, error) {
	name, err := syscall.UTF16PtrFromString(path)
	if err != nil {
		return nil, err
	}
	handle, err := syscall.CreateFile(name, syscall.GENERIC_READ|syscall.GENERIC_WRITE,
		0, nil, syscall.OPEN_EXISTING, syscall.FILE_ATTRIBUTE_NORMAL, 0)
	switch err {
	case nil:
		return os.NewFile(uintptr(handle), path), nil
	case errSharing:
		return nil, ErrHeld
	}
	return nil, err
}
