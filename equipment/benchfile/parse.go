package benchfile

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"unicode/utf8"

	"github.com/pelletier/go-toml/v2"
)

// Parse returns the root table of a TOML text, before which a byte order mark is read
// over. The name is the one shown in
// mistakes. A fault in the text is a *Mistake.
func Parse(name string, data []byte) (*Table, error) {
	if len(data) > largest {
		return nil, fmt.Errorf("%s: %w", name, errTooLarge)
	}
	read := bytes.Clone(data)
	_, data = cutMark(data)
	data = bytes.Clone(data) // places refer to it as long as tables live
	src := newSource(name, data)
	src.read = read
	if m := checkBytes(src); m != nil {
		return nil, m
	}
	root, m := build(src)
	if m == nil {
		m = checkValid(src)
	}
	if m == nil && len(root.entries) == 0 {
		m = &Mistake{place: src.place(0), Message: "the file is empty: it holds nothing but space and comments"}
	}
	if m != nil {
		return nil, append(root.file.mistakes, m).asError()
	}
	return root, nil
}

// byteOrderMark is what some editors put before UTF-8 text.
const byteOrderMark = "\xEF\xBB\xBF"

// cutMark parts a byte order mark from the text behind it.
func cutMark(data []byte) (mark, text []byte) {
	if bytes.HasPrefix(data, []byte(byteOrderMark)) {
		return data[:len(byteOrderMark)], data[len(byteOrderMark):]
	}
	return nil, data
}

// checkBytes refuses what is not UTF-8 text.
func checkBytes(src *source) *Mistake {
	for _, mark := range []string{"\xFF\xFE", "\xFE\xFF"} {
		if bytes.HasPrefix(src.data, []byte(mark)) {
			return &Mistake{place: src.place(0), Message: "the file is UTF-16 text, not UTF-8", Hint: "save it as UTF-8"}
		}
	}
	if at := bytes.IndexByte(src.data, 0); at >= 0 {
		return &Mistake{place: src.place(at), Message: "the file holds a zero byte: it is not UTF-8 text", Hint: "save it as UTF-8 text"}
	}
	for at := 0; at < len(src.data); {
		r, size := utf8.DecodeRune(src.data[at:])
		if r == utf8.RuneError && size == 1 {
			return src.mistake(span{at, at + 1}, fmt.Sprintf("the byte 0x%02X is not UTF-8 text", src.data[at]), "save the file as UTF-8")
		}
		at += size
	}
	return nil
}

// checkValid asks go-toml for what the tree does not see: numbers and dates out
// of range, and tables defined in two ways.
func checkValid(src *source) *Mistake {
	var all map[string]any
	err := toml.Unmarshal(src.data, &all)
	if err == nil {
		return nil
	}
	at, message := span{0, 1}, err.Error()
	var fault *toml.DecodeError
	if errors.As(err, &fault) {
		row, column := fault.Position()
		from := min(src.lines[row-1]+column-1, len(src.data))
		at = span{from, src.tokenEnd(from)}
	}
	return src.mistake(at, plain(message), "")
}

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
