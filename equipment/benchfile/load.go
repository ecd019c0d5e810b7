package benchfile

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
)

// largest is the size in bytes above which a file is refused.
const largest = 1 << 20

// Read returns the bytes of a file. One that cannot be read, or is larger than 1 MiB, is a
// plain error that starts with the path. The path may be a pipe or a terminal, which is waited
// for until the context is done; its error is then returned as it is, and what is still being
// read is left to itself.
func Read(ctx context.Context, path string) ([]byte, error) {
	type outcome struct {
		data []byte
		err  error
	}
	done := make(chan outcome, 1)
	go func() {
		data, err := read(path)
		done <- outcome{data, err}
	}()
	var o outcome
	select {
	case <-ctx.Done():
		return nil, ctx.Err()
	case o = <-done:
	}
	var at *fs.PathError
	if errors.As(o.err, &at) {
		o.err = at.Err
	}
	if o.err != nil {
		return nil, fmt.Errorf("%s: %w", path, o.err)
	}
	return o.data, nil
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
