package bench

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"strings"

	"minim/equipment/benchfile"
	"minim/uncertainty/record"
	"minim/uncertainty/route"
)

// largest is the size in bytes above which package benchfile refuses a file.
const largest = 1 << 20

// appendTo adds to the file at path what add returns for its present text: whole lines,
// each ended by "\n", which get the line ends of the file. No earlier byte is changed,
// and the lines are on the disk when it returns.
//
// The file is locked before it is read, until the lines are on the disk and have been read
// back: of two that add at once, in one process or two, one waits, and sees the lines of
// the other. The waiting ends with the context, and nothing is written; waiting is called
// once when it takes long. An editor does not ask for the lock: that it has put another
// file in the place of this one is seen before and after the writing. An add must not call
// appendTo for the same file.
//
// When the writing breaks off, because the disk is full or the process is killed, a
// piece of a line is left, and [wholeLines] leaves it out. The next call strikes it with a
// mark behind it. This holds for lines of which no piece is right TOML, such as a header
// or an entry in braces. Of more lines than one, those above the piece stand.
//
// An error of add, and that of a context that is cancelled, is returned as it is, and nothing is written. All
// others start with the path: there is no such file, it is larger than 1 MiB or would be,
// it cannot be read, locked or written. It panics when the lines are not ended.
func appendTo(ctx context.Context, path string, waiting func(), add func(text []byte) (lines string, err error)) error {
	file, text, err := take(ctx, path, waiting)
	switch {
	case errors.Is(err, context.Canceled):
		return err
	case err != nil:
		return fmt.Errorf("%s: %w", path, cause(err))
	}
	defer file.Close() // and so unlocks it
	lines, err := add(text)
	if err != nil {
		return err
	}
	joint, lines := joined(path, text, lines)
	if len(text)+len(joint)+len(lines) > largest {
		return fmt.Errorf("%s: would be larger than 1 MiB with one more entry, too large for a record", path)
	}
	err = put(file, int64(len(text)), joint, lines)
	if err == nil && !standsAt(file, path) {
		err = errors.New("was replaced by another program while it was added to, and does not hold what was added: look at it, and add it again")
	}
	if err != nil {
		return fmt.Errorf("%s: %w", path, err)
	}
	return nil
}

// put writes the two, which come to stand at an offset, and reads them back.
func put(file syncReader, at int64, joint, lines string) error {
	if err := write(file, joint, lines); err != nil {
		return err
	}
	return readBack(file, at, joint+lines)
}

// readBack reads what was written at an offset.
func readBack(file io.ReaderAt, at int64, written string) error {
	found := make([]byte, len(written))
	n, err := file.ReadAt(found, at)
	switch {
	case string(found[:n]) == written:
		return nil
	case err != nil && err != io.EOF:
		return fmt.Errorf("what was added cannot be read back: %w", cause(err))
	}
	return errors.New("does not hold what was added when it is read back: another program has written to it, or the disk is faulty; look at it, and add it again")
}

// take opens and locks a file, and reads all of it.
func take(ctx context.Context, path string, waiting func()) (file *os.File, text []byte, err error) {
	info, err := os.Stat(path)
	switch {
	case err != nil:
		return nil, nil, err
	case info.IsDir():
		return nil, nil, errors.New("is a folder, not a file")
	case !info.Mode().IsRegular():
		return nil, nil, errors.New("is not a file on a disk, and cannot be added to")
	}
	if file, err = openLocked(ctx, path, waiting, tryLocked); err != nil {
		return nil, nil, err
	}
	text, err = io.ReadAll(io.LimitReader(file, largest+1))
	if err == nil && len(text) > largest {
		err = errors.New("is larger than 1 MiB, too large for a record")
	}
	if err != nil {
		file.Close()
		return nil, nil, err
	}
	return file, text, nil
}

// joined returns what is written behind a text so that lines stand below it: the end of
// its last line where that has none, behind the mark when it was cut off, and the lines
// with the line ends of the text.
func joined(name string, text []byte, lines string) (joint, ended string) {
	if !strings.HasSuffix(lines, "\n") {
		panic("bench: the lines to be added are not ended")
	}
	end := benchfile.LineEnd(text)
	lines = strings.ReplaceAll(lines, "\n", end)
	_, cut := wholeLines(name, text)
	switch {
	case len(text) == 0 || bytes.HasSuffix(text, []byte("\n")):
		return "", lines
	case len(cut) > 0 && cut[len(cut)-1].Line == bytes.Count(text, []byte("\n"))+1:
		return " " + struck + end, lines
	case bytes.HasSuffix(text, []byte("\r")):
		return "\n", lines
	}
	return end, lines
}

// syncWriter is what of a file is needed to add to it.
type syncWriter interface {
	io.Writer
	Sync() error
}

// syncReader is what is needed to look at it afterwards as well.
type syncReader interface {
	syncWriter
	io.ReaderAt
}

// write writes the two in one call, and waits until it is on the disk. A line of which
// all but its end was written is there: the next call of appendTo ends it.
func write(file syncWriter, joint, lines string) error {
	n, err := file.Write([]byte(joint + lines))
	rest := strings.TrimLeft(lines[max(0, n-len(joint)):], "\r\n")
	if missing := strings.Count(rest, "\n"); missing > 0 {
		if err == nil {
			err = io.ErrShortWrite
		}
		if missing == 1 {
			return fmt.Errorf("the last entry was not added whole, and the file still reads as before it: %w", cause(err))
		}
		return fmt.Errorf("the last %d entries were not added whole, and the file still reads as before them: %w", missing, cause(err))
	}
	if err := file.Sync(); err != nil {
		return fmt.Errorf("all was added, but may be lost if the machine stops: %w", cause(err))
	}
	return nil
}

// cause takes off what an error of a file says of its path.
func cause(err error) error {
	var at *fs.PathError
	if errors.As(err, &at) {
		return at.Err
	}
	return err
}

// Addition is what is to be added to a record: by whom, when, and lines like
//
//	step 3: took 1.96 mL
//	step 3: took 2.05 mL with the 5 mL pipette; note = level read twice
//	step 2: spoilt, filled past the mark
//	step 2: done
//	step 2, late: made up to 25 mL
//	entry 4: took 1.94 mL
//	entry 4: withdrawn
//	bench: 23 °C within 1 °C
type Addition struct {
	By, At string
	Lines  []string
	// Check, if there is one, looks at the record as it would be; with an error nothing is
	// written. Waiting, if there is one, is called when the record is waited for long.
	Check   func(r *record.Record) error
	Waiting func()
}

// Add appends entries to the record file of a prep, all or none. Nothing is written when
// the record would not be right with them. Errors: a *quantity.Error of a line that cannot be understood, a
// *benchfile.Mistake, whose place is the new entry or the file as it was, those of Check,
// and those of adding to the file.
func Add(ctx context.Context, path string, p *route.Prep, a Addition) error {
	return appendTo(ctx, path, a.Waiting, func(text []byte) (string, error) {
		lines, r, err := a.added(path, text, p)
		if err == nil && a.Check != nil {
			err = a.Check(r)
		}
		return lines, err
	})
}

// added words the additions to the text of a record, and reads it with them.
func (a *Addition) added(path string, text []byte, p *route.Prep) (lines string, with *record.Record, err error) {
	r, err := readRecord(path, text, p)
	if err != nil {
		return "", nil, err
	}
	if lines, err = a.entries(r); err != nil {
		return "", nil, err
	}
	with, err = parseWith(path, text, lines, p)
	return lines, with, err
}

// entries words the additions as lines of a record.
func (a *Addition) entries(r *recordReader) (string, error) {
	var b strings.Builder
	for i, line := range a.Lines {
		keys, err := parseAddition(line, r)
		if err != nil {
			return "", err
		}
		keys = append(keys, textAt("by", a.By), textAt("at", a.At))
		fmt.Fprintf(&b, "%d = { %s }\n", r.last+i+1, strings.Join(keys, ", "))
	}
	return b.String(), nil
}

// parseWith reads the record as it would be. The place of a mistake in what is added is
// the option that it came by, since it is in no file.
func parseWith(path string, text []byte, lines string, p *route.Prep) (*record.Record, error) {
	whole, _ := wholeLines(path, text)
	before := strings.Count(string(whole), "\n") + 1
	if n := len(whole); n > 0 && whole[n-1] != '\n' {
		whole = append(whole, '\n')
	} else {
		before--
	}
	r, err := ParseRecord(path, append(whole, lines...), p)
	told, _ := benchfile.Told(err)
	for _, m := range told {
		if m.Line > before {
			m.File, m.Line = ofMistake("the new entry"), 0
		}
	}
	return r, err
}
