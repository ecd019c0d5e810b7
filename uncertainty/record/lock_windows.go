package record

import (
	"os"
	"syscall"
	"time"
)

// errSharing is the error of a file that another has open.
const errSharing = syscall.Errno(32)

// openLocked opens a file to be read and added to, and waits until nobody else has it
// open. Nobody can open it until it is closed. It is added to where the reading ends.
func openLocked(path string) (*os.File, error) {
	name, err := syscall.UTF16PtrFromString(path)
	if err != nil {
		return nil, err
	}
	for {
		handle, err := syscall.CreateFile(name, syscall.GENERIC_READ|syscall.GENERIC_WRITE,
			0, nil, syscall.OPEN_EXISTING, syscall.FILE_ATTRIBUTE_NORMAL, 0)
		if err == nil {
			return os.NewFile(uintptr(handle), path), nil
		}
		if err != errSharing {
			return nil, err
		}
		time.Sleep(10 * time.Millisecond)
	}
}
