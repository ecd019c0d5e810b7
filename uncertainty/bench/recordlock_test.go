package bench

import (
	"context"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// held holds the lock of a file until free is called.
func held(t *testing.T, path string) (free func()) {
	t.Helper()
	holding, release, done := make(chan bool), make(chan bool), make(chan error)
	go func() {
		done <- appendTo(context.Background(), path, nil, func([]byte) (string, error) {
			close(holding)
			<-release
			return "", errors.New("nothing to add")
		})
	}()
	<-holding
	return func() {
		close(release)
		assert.EqualError(t, <-done, "nothing to add")
	}
}

// The waiting for a lock is told once, and ends with the context; nothing is written.
func TestWaitingForALockEnds(t *testing.T) {
	path := recordFile(t, above)
	defer held(t, path)()
	ctx, stop := context.WithCancel(t.Context())
	told := 0
	err := appendTo(ctx, path, func() { told++; stop() }, func([]byte) (string, error) { panic("it is locked") })
	assert.Equal(t, context.Canceled, err)
	assert.Equal(t, 1, told)
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, above, string(text))
}

// A context that is done before anything is asked for adds nothing either.
func TestAppendWithoutTime(t *testing.T) {
	path := recordFile(t, above)
	ctx, stop := context.WithCancel(t.Context())
	stop()
	assert.Equal(t, context.Canceled, appendTo(ctx, path, nil, func([]byte) (string, error) { panic("too late") }))
}

// A file that is put in the place of a record while its lock is waited for is the one
// that is added to.
func TestRecordReplacedWhileWaitedFor(t *testing.T) {
	path := recordFile(t, above)
	free := held(t, path)
	added := make(chan error)
	go func() {
		_, err := addEntry(path, "2 mL")
		added <- err
	}()
	time.Sleep(3 * tryEvery) // so that it waits, most likely; it must hold in any case
	const other = "[entries]\n1 = { take = \"7 mL\" }\n"
	replace(t, path, other)
	free()
	require.NoError(t, <-added)
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, other+"2 = { take = \"2 mL\" }\n", string(text))
}

// A file that is replaced after it was opened and before it is locked is opened again.
func TestRecordReplacedBeforeItIsLocked(t *testing.T) {
	path := recordFile(t, above)
	const other = "[entries]\n"
	tries := 0
	file, err := openLocked(t.Context(), path, nil, func(path string) (*os.File, error) {
		file, err := tryLocked(path)
		if tries++; tries == 1 {
			replace(t, path, other)
		}
		return file, err
	})
	require.NoError(t, err)
	defer file.Close()
	text, err := io.ReadAll(file)
	require.NoError(t, err)
	assert.Equal(t, other, string(text))
	assert.Equal(t, 2, tries)
}

// replace puts another file in the place of one, as an editor does.
func replace(t *testing.T, path, text string) {
	t.Helper()
	beside := filepath.Join(filepath.Dir(path), "beside")
	require.NoError(t, os.WriteFile(beside, []byte(text), 0o600))
	require.NoError(t, os.Rename(beside, path))
}

// An entry that went into a file which stands nowhere by then is not called added.
func TestRecordReplacedWhileAddedTo(t *testing.T) {
	for _, gone := range []bool{false, true} {
		path := recordFile(t, above)
		err := appendTo(t.Context(), path, nil, func([]byte) (string, error) {
			if gone {
				require.NoError(t, os.Remove(path))
			} else {
				replace(t, path, above)
			}
			return "2 = { }\n", nil
		})
		assert.EqualError(t, err, path+": was replaced by another program while it was added to, and does not hold what was added: look at it, and add it again")
	}
}

// What is not a file on a disk cannot be added to.
func TestAppendToADevice(t *testing.T) {
	if info, err := os.Stat(os.DevNull); err != nil || info.Mode().IsRegular() {
		t.Skip("there is no such device")
	}
	_, err := addEntry(os.DevNull, "1 mL")
	assert.EqualError(t, err, os.DevNull+": is not a file on a disk, and cannot be added to")
}

// lying is a disk that gives back another text than was written, or none.
type lying struct {
	text string
	err  error
}

func (d lying) ReadAt(p []byte, at int64) (int, error) {
	n := copy(p, d.text[min(int(at), len(d.text)):])
	if d.err == nil && n < len(p) {
		return n, io.EOF
	}
	return n, d.err
}

// forgetful is a disk that says that it has written all, and has not.
type forgetful struct {
	lying
	syncs int
}

func (d *forgetful) Write(text []byte) (int, error) { return len(text), nil }
func (d *forgetful) Sync() error                    { d.syncs++; return nil }

// What a disk says it has written, and has not, is not called added.
func TestPutOnAForgetfulDisk(t *testing.T) {
	d := &forgetful{lying: lying{above, nil}}
	err := put(d, int64(len(above)), "", "2 = { }\n")
	require.Error(t, err)
	assert.Contains(t, err.Error(), "does not hold what was added when it is read back")
	assert.Equal(t, 1, d.syncs)
	d.lying.text += "2 = { }\n"
	assert.NoError(t, put(d, int64(len(above)), "", "2 = { }\n"))
}

// What was written is read back before it is called added.
func TestReadBack(t *testing.T) {
	const written = "2 = { take = \"µ\" }\n"
	assert.NoError(t, readBack(lying{above + written, nil}, int64(len(above)), written))
	assert.NoError(t, readBack(lying{above + written, io.EOF}, int64(len(above)), written))
	for _, text := range []string{above, above + written[:5], above + strings.ToUpper(written), ""} {
		err := readBack(lying{text, nil}, int64(len(above)), written)
		require.Error(t, err)
		assert.Contains(t, err.Error(), "does not hold what was added when it is read back")
	}
	broken := &fs.PathError{Op: "read", Path: "r.toml", Err: errors.New("input/output error")}
	assert.EqualError(t, readBack(lying{above, broken}, int64(len(above)), written), "what was added cannot be read back: input/output error")
}

// A lock is tried once: it is held, or the file is gone, or it is there until it is closed.
func TestTryLock(t *testing.T) {
	path := recordFile(t, above)
	_, err := TryLock(path + "x")
	assert.ErrorIs(t, err, fs.ErrNotExist)
	free := held(t, path)
	_, err = TryLock(path)
	assert.ErrorIs(t, err, ErrHeld)
	free()
	file, err := TryLock(path)
	require.NoError(t, err)
	_, err = TryLock(path)
	assert.ErrorIs(t, err, ErrHeld)
	require.NoError(t, file.Close())
	file, err = TryLock(path)
	require.NoError(t, err)
	require.NoError(t, file.Close())
}
