package benchfile

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
)

// largest is the size in bytes above which a file is refused.
const largest = 1 << 20

// Load reads and parses a file. A file that cannot be read, or is larger than
// 1 MiB, is a plain error that starts with the path; a fault in its text is a
// *Mistake.
func Load(path string) (*Table, error) {
	data, err := Read(path)
	if err != nil {
		return nil, err
	}
	return Parse(path, data)
}

// Read returns the bytes of a file; its errors are the plain ones of [Load].
func Read(path string) ([]byte, error) {
	data, err := read(path)
	if err != nil {
		var at *fs.PathError
		if errors.As(err, &at) {
			err = at.Err
		}
		return nil, fmt.Errorf("%s: %w", path, err)
	}
	return data, nil
}

// read returns the bytes of a file, at most one more than the largest size.
func read(path string) ([]byte, error) {
	file, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer file.Close()
	if info, err := file.Stat(); err == nil && info.IsDir() {
		return nil, errors.New("is a folder, not a file")
	}
	data, err := io.ReadAll(io.LimitReader(file, largest+1))
	if err != nil {
		return nil, err
	}
	if len(data) > largest {
		return nil, errTooLarge
	}
	return data, nil
}

var errTooLarge = errors.New("is larger than 1 MiB, too large for a file of a bench")
