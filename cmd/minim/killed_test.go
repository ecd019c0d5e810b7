//go:build unix

package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// toBeKilled says, to a second process, before which operation of its disk it is killed,
// and in which of the cases of [killedCases].
const toBeKilled = "MINIM_TEST_KILLED_AT"

// killingDisk kills the process before one of its operations, counted from 0.
type killingDisk struct {
	realDisk
	at, done int
}

func (d *killingDisk) step() {
	if d.done++; d.done-1 == d.at {
		_ = syscall.Kill(os.Getpid(), syscall.SIGKILL)
		time.Sleep(time.Minute)
	}
}

func (d *killingDisk) mkdirTemp(dir, pattern string) (string, error) {
	d.step()
	return d.realDisk.mkdirTemp(dir, pattern)
}
func (d *killingDisk) mkdir(path string) error      { d.step(); return d.realDisk.mkdir(path) }
func (d *killingDisk) rename(from, to string) error { d.step(); return d.realDisk.rename(from, to) }
func (d *killingDisk) link(from, to string) error   { d.step(); return d.realDisk.link(from, to) }
func (d *killingDisk) remove(path string) error     { d.step(); return d.realDisk.remove(path) }
func (d *killingDisk) create(path string) (temporary, error) {
	d.step()
	t, err := d.realDisk.create(path)
	return killingFile{t, d}, err
}

type killingFile struct {
	temporary
	disk *killingDisk
}

func (f killingFile) Write(data []byte) (int, error) {
	f.disk.step()
	n, err := f.temporary.Write(data[:len(data)/2])
	f.disk.step()
	m, err2 := f.temporary.Write(data[len(data)/2:])
	if err == nil {
		err = err2
	}
	return n + m, err
}

// killedCases write files; dir is there, with one of the files.
var killedCases = []func(dir string){
	func(dir string) { _ = writeAll(dir, pair, true) },
	func(dir string) { _ = writeAll(filepath.Join(dir, "a", "b"), pair, false) },
	func(dir string) { // and all is taken back, since a folder comes into the way
		s, err := stage(dir, append(append([]file(nil), pair...), file{Name: "three", Data: []byte("3, new")}), true)
		if err == nil {
			_ = os.MkdirAll(filepath.Join(dir, "three", "full"), 0o777)
			_ = s.commit()
			s.discard()
		}
	},
	func(dir string) { finishEarlier(dir) }, // for [TestKilledWhileFinishing]
}

// TestBeingKilled is the second process.
func TestBeingKilled(t *testing.T) {
	text, ok := os.LookupEnv(toBeKilled)
	if !ok {
		t.Skip("it is for a second process")
	}
	var which, at int
	_, err := fmt.Sscan(text, &which, &at)
	require.NoError(t, err)
	onDisk = &killingDisk{at: at}
	killedCases[which]("there")
}

// Wherever a process is killed, the next run leaves nothing temporary, and of a set of files
// all are new, or all as they were.
func TestKilledWhileWriting(t *testing.T) {
	for which := range len(killedCases) - 1 {
		states := map[string]bool{}
		for at := 0; ; at++ {
			t.Chdir(t.TempDir())
			require.NoError(t, os.Mkdir("there", 0o777))
			require.NoError(t, os.WriteFile(filepath.Join("there", "two"), []byte("2, old"), 0o644))
			err := beKilled(which, at)
			finishEarlier("there")
			found := tree(t, "there")
			states[found] = true
			switch which {
			case 0:
				assert.Contains(t, []string{"two: 2, old", "one: 1, new; two: 2, new"}, found, at)
			case 1:
				assert.Contains(t, []string{"two: 2, old", "a; a/b; a/b/one: 1, new; a/b/two: 2, new; two: 2, old"}, found, at)
			case 2:
				assert.Contains(t, []string{"two: 2, old", "three; three/full; two: 2, old"}, found, at)
			}
			if err == nil {
				assert.Greater(t, at, 10)
				break
			}
			require.Contains(t, err.Error(), "killed")
		}
		assert.Len(t, states, 2, "it is killed early and late")
	}
}

// The run that finishes what a killed one has left may be killed as well; so may the next.
func TestKilledWhileFinishing(t *testing.T) {
	for _, others := range []bool{false, true} {
		for at := 0; ; at++ {
			t.Chdir(t.TempDir())
			require.NoError(t, os.Mkdir("there", 0o777))
			require.NoError(t, os.WriteFile(filepath.Join("there", "one"), []byte("1, old"), 0o644))
			left(t, "there", pair...)
			want := "one: 1, new; two: 2, new"
			if others {
				require.NoError(t, os.WriteFile(filepath.Join("there", "two"), []byte("of the user"), 0o644))
				want = "one: 1, old; two: of the user"
			}
			err := beKilled(len(killedCases)-1, at)
			_ = beKilled(len(killedCases)-1, at)
			finishEarlier("there")
			assert.Equal(t, want, tree(t, "there"), at)
			if err == nil {
				assert.Greater(t, at, 3)
				break
			}
		}
	}
}

// beKilled carries out a case in a second process, which is killed before an operation.
func beKilled(which, at int) error {
	child := exec.Command(os.Args[0], "-test.run=^TestBeingKilled$")
	child.Env = append(os.Environ(), toBeKilled+"="+strconv.Itoa(which)+" "+strconv.Itoa(at))
	return child.Run()
}

// tree lists what is in a folder, in one line.
func tree(t *testing.T, dir string) string {
	t.Helper()
	var list []string
	require.NoError(t, filepath.WalkDir(dir, func(path string, e os.DirEntry, err error) error {
		require.NoError(t, err)
		name, err := filepath.Rel(dir, path)
		require.NoError(t, err)
		switch {
		case name == ".":
		case e.IsDir():
			list = append(list, name)
		default:
			list = append(list, name+": "+read(t, path))
		}
		return nil
	}))
	return strings.Join(list, "; ")
}

// Where the reader of what is printed has gone, what was to be kept is there, and nothing
// temporary.
func TestReaderThatIsGone(t *testing.T) {
	gumFiles(t)
	for _, args := range [][]string{
		{"compare", "prep.toml", "--trials", "10000", "--out", "results"},
		{"plan", "prep.toml", "--steps", "1", "--trials", "10000", "--save", "more.toml"},
	} {
		reader, writer, err := os.Pipe()
		require.NoError(t, err)
		require.NoError(t, reader.Close())
		p := exec.Command(os.Args[0], "-test.run=^TestAsCommand$")
		p.Env = append(os.Environ(), asCommand+"="+strings.Join(args, "\n"))
		p.Stdout = writer
		require.ErrorContains(t, p.Run(), "broken pipe")
		require.NoError(t, writer.Close())
	}
	assert.Equal(t, []string{"kit.toml", "more.toml", "prep.toml", "record.toml", "results"}, names(t, "."))
	assert.Contains(t, names(t, "results"), "compare.json")
}

// left leaves, beside files of a folder, what a process leaves that is killed when it
// begins to move them.
func left(t *testing.T, dir string, files ...file) {
	t.Helper()
	s, err := stage(dir, files, true)
	require.NoError(t, err)
	defer func() { onDisk = realDisk{} }()
	onDisk = stuckDisk{}
	func() {
		defer func() { require.NotNil(t, recover()) }()
		_ = s.commit()
	}()
	require.NoError(t, s.beside.lock.Close())
}

// stuckDisk goes no further than to a place.
type stuckDisk struct{ realDisk }

func (d stuckDisk) rename(from, to string) error {
	if filepath.Base(to) != forward {
		panic("killed")
	}
	return d.realDisk.rename(from, to)
}

// What others have written since into the places of files that a killed run was to move is
// kept.
func TestWhatCameSinceIsKept(t *testing.T) {
	t.Chdir(t.TempDir())
	require.NoError(t, os.WriteFile("two", []byte("2, old"), 0o644))
	left(t, ".", pair...)
	require.NoError(t, os.WriteFile("one", []byte("of the user"), 0o644))
	assert.Empty(t, finishEarlier("."))
	assert.Equal(t, "one: of the user; two: 2, old", tree(t, "."))
	left(t, ".", pair...)
	require.NoError(t, os.WriteFile("two", []byte("of the user"), 0o644))
	assert.Empty(t, finishEarlier("."))
	assert.Equal(t, "one: of the user; two: of the user", tree(t, "."))
	left(t, ".", pair...)
	assert.Equal(t, []string{"one", "two"}, finishEarlier("."))
	assert.Equal(t, "one: 1, new; two: 2, new", tree(t, "."))
	assert.Empty(t, finishEarlier("."))
}

// What a program writes that still runs is left alone, and so is what only looks like it.
func TestWhatIsInUseIsLeftAlone(t *testing.T) {
	t.Chdir(t.TempDir())
	s, err := stage(filepath.Join("a", "b"), pair, false)
	require.NoError(t, err)
	require.NoError(t, os.Mkdir(".minim-mine", 0o777))
	require.NoError(t, os.WriteFile(filepath.Join(".minim-mine", "notes"), nil, 0o644))
	require.NoError(t, os.WriteFile(".minim-file", nil, 0o644))
	require.NoError(t, os.Mkdir(".minim-empty", 0o777))
	assert.Empty(t, finishEarlier(filepath.Join("a", "b")))
	require.NoError(t, s.commit())
	s.discard()
	assert.Equal(t, ".minim-file: ; .minim-mine; .minim-mine/notes: ; a; a/b; a/b/one: 1, new; a/b/two: 2, new", tree(t, "."))
}

// A journal that names a file elsewhere is not one of this program, and moves nothing.
func TestJournalThatReachesElsewhere(t *testing.T) {
	t.Chdir(t.TempDir())
	for _, line := range []string{`6 0 -1 0 "../out"`, `6 0 -1 0 "/out"`, `6 0 -1`, `x`, "6 0 -1 0 \"one\"\nrest"} {
		b, err := newBeside(".")
		require.NoError(t, err)
		require.NoError(t, os.MkdirAll(b.newFiles(), 0o777))
		require.NoError(t, os.WriteFile(filepath.Join(b.newFiles(), "one"), []byte("1, new"), 0o644))
		require.NoError(t, os.WriteFile(filepath.Join(b.path, forward), []byte(line+"\n"), 0o644))
		require.NoError(t, b.lock.Close())
		assert.Empty(t, finishEarlier("."), line)
		assert.Empty(t, tree(t, "."), line)
	}
}

// The next run says what it has completed.
func TestCompletedFilesAreTold(t *testing.T) {
	gumFiles(t)
	left(t, ".", file{Name: "a.md", Data: []byte("a")}, file{Name: "b.md", Data: []byte("b")})
	p := startProcess(t, "sheet", "prep.toml", "--out", "c.md")
	require.NoError(t, p.Wait())
	assert.True(t, strings.HasPrefix(p.text(), "minim: wrote a.md, which an earlier run had begun and was killed at\nminim: wrote b.md, which an earlier run had begun and was killed at\nminim: wrote "), p.text())
	assert.Equal(t, "a", read(t, "a.md"))
}

// What another user has left is left alone: a journal of theirs could say anything.
func TestWhatOthersLeftIsLeftAlone(t *testing.T) {
	if os.Geteuid() != 0 {
		t.Skip("only root can give a folder to another user")
	}
	t.Chdir(t.TempDir())
	left(t, ".", pair...)
	found, err := filepath.Glob(besideName + "*")
	require.NoError(t, err)
	require.Len(t, found, 1)
	require.NoError(t, os.Chown(found[0], 12345, 12345))
	assert.Empty(t, finishEarlier("."))
	assert.Equal(t, found, names(t, "."))
}
