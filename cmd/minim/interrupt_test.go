//go:build unix

package main

import (
	"bytes"
	"errors"
	"os"
	"os/exec"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty/bench"
)

// asCommand holds, for a second process, the command line that it is to carry out.
const asCommand = "MINIM_TEST_COMMAND"

// TestAsCommand is the second process.
func TestAsCommand(t *testing.T) {
	line, ok := os.LookupEnv(asCommand)
	if !ok {
		t.Skip("it is for a second process")
	}
	os.Args = append([]string{"minim"}, strings.Split(line, "\n")...)
	main()
}

// process is a command in a second process.
type process struct {
	*exec.Cmd
	lock sync.Mutex
	said bytes.Buffer
}

func (p *process) Write(text []byte) (int, error) {
	p.lock.Lock()
	defer p.lock.Unlock()
	return p.said.Write(text)
}

// text is what the process has said so far.
func (p *process) text() string {
	p.lock.Lock()
	defer p.lock.Unlock()
	return p.said.String()
}

func startProcess(t *testing.T, args ...string) *process {
	t.Helper()
	p := &process{Cmd: exec.Command(os.Args[0], "-test.run=^TestAsCommand$")}
	p.Env = append(os.Environ(), asCommand+"="+strings.Join(args, "\n"))
	p.Stdout, p.Stderr = p, p
	require.NoError(t, p.Start())
	return p
}

// interrupt sends Ctrl-C, and waits for the end of the process.
func (p *process) interrupt(t *testing.T) (code int) {
	t.Helper()
	require.NoError(t, p.Process.Signal(os.Interrupt))
	killed := time.AfterFunc(20*time.Second, func() { _ = p.Process.Kill() })
	defer killed.Stop()
	var exit *exec.ExitError
	require.True(t, errors.As(p.Wait(), &exit))
	return exit.ExitCode()
}

// opened opens a pipe to write to it once another process reads from it.
func opened(t *testing.T, path string) (writer *os.File) {
	t.Helper()
	require.Eventually(t, func() (ok bool) {
		var err error
		writer, err = os.OpenFile(path, os.O_WRONLY|syscall.O_NONBLOCK, 0)
		return err == nil
	}, 20*time.Second, 5*time.Millisecond)
	return writer
}

// The first Ctrl-C ends the waiting for a file, of whatever command: here a pipe that
// nobody writes to stands in the place of the prep, the kit and the record.
func TestInterruptWhileAFileIsWaitedFor(t *testing.T) {
	t.Chdir(t.TempDir())
	output(t, "new", "b")
	for _, args := range [][]string{
		{"compare", "pipe"}, {"plan", "pipe"}, {"buy", "pipe"}, {"report", "pipe"}, {"sheet", "pipe"}, {"label", "pipe"}, {"kit", "pipe"},
		{"compare", "b/dye.toml", "--kit", "pipe"}, {"made", "pipe", "record.toml"}, {"made", "b/dye.toml", "pipe"}, {"report", "b/dye.toml", "--record", "pipe"},
		{"rescue", "pipe", "--has", "8 % w/v, 20 mL"}, {"rescue", "--kit", "pipe", "--has", "8 % w/v, 20 mL", "--to", "1 % w/v", "--volume", "5 mL"},
		{"new", "--record", "pipe", "r.toml"},
	} {
		require.NoError(t, syscall.Mkfifo("pipe", 0o600))
		p := startProcess(t, args...)
		writer := opened(t, "pipe")
		assert.Equal(t, exitFailed, p.interrupt(t), args)
		assert.Equal(t, "minim: stopped\n", p.text(), args)
		require.NoError(t, writer.Close())
		require.NoError(t, os.Remove("pipe"))
	}
	assert.NoFileExists(t, "r.toml")
}

// Ctrl-C ends the waiting for the lock of a record as well, which is told after 2 s, and
// leaves the record as it is.
func TestInterruptWhileALockIsWaitedFor(t *testing.T) {
	t.Chdir(t.TempDir())
	output(t, "new", "b")
	output(t, "new", "--record", "b/dye.toml", "--route", "two dilutions", "record.toml")
	before := read(t, "record.toml")
	held, err := bench.TryLock("record.toml")
	require.NoError(t, err)
	p := startProcess(t, "made", "b/dye.toml", "record.toml", "--by", "AK", "--add", "step 1: done")
	const waiting = "minim: waiting for record.toml, held by another program\n"
	require.Eventually(t, func() bool { return p.text() == waiting }, 20*time.Second, 10*time.Millisecond)
	assert.Equal(t, exitFailed, p.interrupt(t))
	assert.Equal(t, waiting+"minim: stopped\n", p.text())
	require.NoError(t, held.Close())
	assert.Equal(t, before, read(t, "record.toml"))
}

// A lock that another gives back in the end is waited for, and the entry is there.
func TestLockThatIsGivenBack(t *testing.T) {
	t.Chdir(t.TempDir())
	output(t, "new", "b")
	output(t, "new", "--record", "b/dye.toml", "--route", "two dilutions", "record.toml")
	held, err := bench.TryLock("record.toml")
	require.NoError(t, err)
	p := startProcess(t, "made", "b/dye.toml", "record.toml", "--by", "AK", "--add", "step 1: weighed 1.03 g", "--trials", "10000")
	time.Sleep(300 * time.Millisecond)
	_, err = held.WriteString("8 = { temperature = \"22 °C\", by = \"LR\", at = \"2026-11-30\" }\n")
	require.NoError(t, err)
	require.NoError(t, held.Close())
	require.NoError(t, p.Wait(), p.text())
	assert.Contains(t, read(t, "record.toml"), "9 = { step = 1, weigh = \"1.03 g\", by = \"AK\"")
	assert.Contains(t, p.text(), "minim: added to record.toml: step 1: weighed 1.03 g\n")
}
