//go:build unix

package benchfile

import (
	"context"
	"os"
	"path/filepath"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A pipe that nobody writes to is waited for until the context is done; one that somebody
// writes to late is read whole.
func TestReadOfAPipe(t *testing.T) {
	path := filepath.Join(t.TempDir(), "pipe")
	require.NoError(t, syscall.Mkfifo(path, 0o600))
	ctx, stop := context.WithTimeout(t.Context(), 50*time.Millisecond)
	defer stop()
	_, err := Read(ctx, path)
	assert.Equal(t, context.DeadlineExceeded, err)

	second := filepath.Join(t.TempDir(), "pipe")
	require.NoError(t, syscall.Mkfifo(second, 0o600))
	go func() {
		time.Sleep(20 * time.Millisecond)
		assert.NoError(t, os.WriteFile(second, []byte("a = 1\n"), 0))
	}()
	data, err := Read(t.Context(), second)
	require.NoError(t, err)
	assert.Equal(t, "a = 1\n", string(data))
}
