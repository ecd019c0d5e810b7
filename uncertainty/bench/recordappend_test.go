package bench

import (
	"bufio"
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// recordFile puts a text in a file.
func recordFile(t *testing.T, text string) string {
	path := filepath.Join(t.TempDir(), "record.toml")
	require.NoError(t, os.WriteFile(path, []byte(text), 0o640))
	return path
}

// addEntry adds an entry with the next number, and returns what stood above it.
func addEntry(path, take string) (before []byte, err error) {
	err = appendTo(context.Background(), path, nil, func(text []byte) (string, error) {
		before = text
		return fmt.Sprintf("%d = { take = \"%s\" }\n", bytes.Count(text, []byte("take"))+1, take), nil
	})
	return before, err
}

// What stands in the file afterwards (constructed).
func TestAppend(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"", "1 = { take = \"µ\" }\n"},
		{above, above + "2 = { take = \"µ\" }\n"},
		{"# no line end", "# no line end\n1 = { take = \"µ\" }\n"},
		{"# cr\r\n", "# cr\r\n1 = { take = \"µ\" }\r\n"},
		{"# cr\r\n# no line end", "# cr\r\n# no line end\r\n1 = { take = \"µ\" }\r\n"},
		{"# cr\r\n# half a line end\r", "# cr\r\n# half a line end\r\n1 = { take = \"µ\" }\r\n"},
		{"# cr\r\nx = \"a", "# cr\r\nx = \"a # cut off, left out\r\n1 = { take = \"µ\" }\r\n"},
		{"x = \"\u2028\xc2", "x = \"\u2028\xc2 # cut off, left out\n1 = { take = \"µ\" }\n"},
	} {
		path := recordFile(t, c.text)
		before, err := addEntry(path, "µ")
		require.NoError(t, err)
		assert.Equal(t, c.text, string(before))
		after, err := os.ReadFile(path)
		require.NoError(t, err)
		assert.Equal(t, c.want, string(after))
	}
}

// The file stays the same file, with its mode.
func TestAppendKeepsMode(t *testing.T) {
	path := recordFile(t, above)
	before, err := os.Stat(path)
	require.NoError(t, err)
	_, err = addEntry(path, "2 mL")
	require.NoError(t, err)
	after, err := os.Stat(path)
	require.NoError(t, err)
	assert.True(t, os.SameFile(before, after))
	assert.Equal(t, before.Mode(), after.Mode())
}

func TestAppendErrors(t *testing.T) {
	const full = "#23456789abcdef\n"
	dir := t.TempDir()
	missing := filepath.Join(dir, "none.toml")
	_, err := addEntry(missing, "1 mL")
	assert.ErrorIs(t, err, fs.ErrNotExist)
	assert.Equal(t, 1, strings.Count(err.Error(), missing))
	assert.NoFileExists(t, missing)

	_, err = addEntry(dir, "1 mL")
	assert.EqualError(t, err, dir+": is a folder, not a file")

	path := recordFile(t, strings.Repeat(full, largest/len(full))+"#")
	for range 2 { // the lock is released
		_, err = addEntry(path, "1 mL")
		assert.EqualError(t, err, path+": is larger than 1 MiB, too large for a record")
	}

	path = recordFile(t, strings.Repeat(full, largest/len(full)-1)+"#")
	_, err = addEntry(path, "1 mL")
	assert.EqualError(t, err, path+": would be larger than 1 MiB with one more entry, too large for a record")
	info, err := os.Stat(path)
	require.NoError(t, err)
	assert.EqualValues(t, largest-len(full)+1, info.Size())
}

func TestAppendReadOnly(t *testing.T) {
	path := recordFile(t, above)
	if os.Geteuid() == 0 {
		t.Skip("root may write to a read-only file")
	}
	require.NoError(t, os.Chmod(path, 0o400))
	_, err := addEntry(path, "1 mL")
	assert.ErrorIs(t, err, fs.ErrPermission)
	assert.True(t, strings.HasPrefix(err.Error(), path+": "), err)
}

// An error of add is handed on as it is; nothing is written, and the lock is released.
func TestAppendRefused(t *testing.T) {
	path := recordFile(t, above+"7 = { t")
	refused := errors.New("refused")
	err := appendTo(context.Background(), path, nil, func([]byte) (string, error) { return "2 = {}\n", refused })
	assert.True(t, err == refused)
	assert.Panics(t, func() {
		_ = appendTo(context.Background(), path, nil, func([]byte) (string, error) { return "2 = {}", nil })
	})
	before, err := addEntry(path, "2 mL")
	require.NoError(t, err)
	assert.Equal(t, above+"7 = { t", string(before))
}

// disk is a file on a disk with room for so many bytes more.
type disk struct {
	text   []byte
	room   int
	full   error
	broken error
}

func (d *disk) Write(added []byte) (int, error) {
	n := min(len(added), d.room)
	d.text = append(d.text, added[:n]...)
	if n < len(added) {
		return n, d.full
	}
	return n, nil
}

func (d *disk) Sync() error { return d.broken }

// What the error says was not added is not there, and all else is (constructed).
func TestWriteFullDisk(t *testing.T) {
	full := &fs.PathError{Op: "write", Path: "r.toml", Err: errors.New("no space left")}
	for _, text := range []string{above, strings.ReplaceAll(above, "\n", "\r\n"), above + "2 = {"} {
		joint, lines := joined("r.toml", []byte(text), "2 = { take = \"µ\" }\n3 = { take = \"µ\" }\n")
		for room := range len(joint+lines) + 1 {
			d := &disk{text: []byte(text), room: room, full: full}
			err := write(d, joint, lines)
			switch entries := entryLines(t, d.text); len(entries) {
			case 1:
				assert.EqualError(t, err, "the last 2 entries were not added whole, and the file still reads as before them: no space left")
			case 2:
				assert.EqualError(t, err, "the last entry was not added whole, and the file still reads as before it: no space left")
			default:
				assert.NoError(t, err)
				assert.Equal(t, []string{"1 = 1 mL", "2 = µ", "3 = µ"}, entries)
			}
		}
	}
	assert.ErrorIs(t, write(&disk{room: 3}, "\n", "2 = {}\n"), io.ErrShortWrite)
	assert.ErrorIs(t, write(&disk{room: 8, broken: io.ErrClosedPipe}, "\n", "2 = {}\n"), io.ErrClosedPipe)
}

// toAddTo names, for a second process, the file to which it is to add.
const toAddTo = "MINIM_TEST_RECORD"

// Two goroutines of each of two processes add at once: every entry is there with a
// number of its own, and each saw those above it.
func TestAppendAtOnce(t *testing.T) {
	if path := os.Getenv(toAddTo); path != "" {
		fmt.Println("ready")
		addMany(t, path, "b")
		return
	}
	path := recordFile(t, above)
	other := exec.Command(os.Args[0], "-test.run=^TestAppendAtOnce$")
	other.Env = append(os.Environ(), toAddTo+"="+path)
	out, err := other.StdoutPipe()
	require.NoError(t, err)
	require.NoError(t, other.Start())
	printed := bufio.NewReader(out)
	_, err = printed.ReadString('\n')
	require.NoError(t, err)
	addMany(t, path, "a")
	rest, err := io.ReadAll(printed)
	require.NoError(t, err)
	require.NoError(t, other.Wait(), "%s", rest)

	text, err := os.ReadFile(path)
	require.NoError(t, err)
	require.True(t, bytes.HasPrefix(text, []byte(above)))
	entries := entryLines(t, text)
	taken := map[string]int{}
	for i, entry := range entries {
		number, take, _ := strings.Cut(entry, " = ")
		assert.Equal(t, fmt.Sprint(i+1), number)
		taken[take]++
	}
	assert.Equal(t, map[string]int{"1 mL": 1, "a0": many, "a1": many, "b0": many, "b1": many}, taken)
}

const many = 10

// addMany adds entries from two goroutines, and checks that what stood above each
// begins with what stood above the last.
func addMany(t *testing.T, path, name string) {
	var both sync.WaitGroup
	for i := range 2 {
		both.Add(1)
		go func() {
			defer both.Done()
			var last []byte
			for range many {
				before, err := addEntry(path, fmt.Sprint(name, i))
				assert.NoError(t, err)
				assert.True(t, bytes.HasPrefix(before, last))
				last = before
			}
		}()
	}
	both.Wait()
}
