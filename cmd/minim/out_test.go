package main

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var pair = []file{{Name: "one", Data: []byte("1, new")}, {Name: "two", Data: []byte("2, new")}}

// Whatever operation of the disk fails, a folder that was to be made is not there, nor one
// above it, and nothing temporary stays.
func TestNewFolderOnAFailingDisk(t *testing.T) {
	defer func() { onDisk = realDisk{} }()
	for at := 0; ; at++ {
		root := t.TempDir()
		d := &failingDisk{at: at}
		onDisk = d
		err := writeAll(filepath.Join(root, "a", "b"), pair, false)
		if d.done <= at {
			require.NoError(t, err)
			assert.Equal(t, []string{"a"}, names(t, root))
			assert.Equal(t, []string{"one", "two"}, names(t, filepath.Join(root, "a", "b")))
			assert.Equal(t, 19, at, "three folders; create, write, mode, sync and close of a lock and two files; one rename")
			return
		}
		require.ErrorIs(t, err, errDisk, at)
		assert.Empty(t, names(t, root), at)
	}
}

// Of two that make one folder the second is refused, with and without force, and leaves
// nothing of its own. So is one that writes a file into a folder that is there, where the
// other has written it meanwhile; with force it replaces that.
func TestTwoIntoOneFolder(t *testing.T) {
	for _, c := range []struct {
		exists, force bool
		message, one  string
	}{
		{false, false, "results was made by another program in the meantime", "1, new"},
		{false, true, "results was made by another program in the meantime", "1, new"},
		{true, false, filepath.Join("results", "one") + " exists already", "1, new"},
		{true, true, "", "other"},
	} {
		t.Chdir(t.TempDir())
		if c.exists {
			require.NoError(t, os.Mkdir("results", 0o777))
		}
		first, err := stage("results", pair, c.force)
		require.NoError(t, err)
		second, err := stage("results", []file{{Name: "one", Data: []byte("other")}}, c.force)
		require.NoError(t, err)
		require.NoError(t, first.commit())
		first.discard()
		err = second.commit()
		second.discard()
		if c.message == "" {
			assert.NoError(t, err)
		} else {
			assert.EqualError(t, err, c.message)
		}
		assert.Equal(t, []string{"results"}, names(t, "."))
		assert.Equal(t, []string{"one", "two"}, names(t, "results"))
		assert.Equal(t, c.one, read(t, filepath.Join("results", "one")))
	}
}

// What cannot be written is printed all the same, and leaves no folder.
func TestResultIsPrintedThoughItCannotBeKept(t *testing.T) {
	gumFiles(t)
	before := names(t, ".")
	want := output(t, "compare", "prep.toml", "--trials", "10000", "--format", "csv")
	defer func() { onDisk = realDisk{} }()
	for _, at := range []int{0, 3, 6, 9, 47} {
		onDisk = &failingDisk{at: at}
		var out, complaint bytes.Buffer
		assert.Equal(t, exitFailed, run(context.Background(), []string{"compare", "prep.toml", "--trials", "10000", "--format", "csv", "--out", "results"}, &out, &complaint), at)
		assert.Equal(t, want, out.String())
		assert.Contains(t, complaint.String(), "the disk is broken")
		assert.NotContains(t, complaint.String(), "wrote")
		assert.Equal(t, before, names(t, "."), at)
	}
	for _, at := range []int{0, 8} { // of --save, with all else in its place
		onDisk = &failingDisk{at: at}
		var out, complaint bytes.Buffer
		assert.Equal(t, exitFailed, run(context.Background(), []string{"plan", "prep.toml", "--steps", "1", "--trials", "10000", "--save", "more.toml"}, &out, &complaint), at)
		assert.Contains(t, out.String(), "\nUSE ")
		assert.Equal(t, before, names(t, "."), at)
	}
}

// So is a paper, as the Markdown that is printed without --out.
func TestPaperIsPrintedThoughItCannotBeKept(t *testing.T) {
	gumFiles(t)
	want := output(t, "label", "prep.toml", "--trials", "10000")
	defer func() { onDisk = realDisk{} }()
	onDisk = &failingDisk{at: 1}
	var out, complaint bytes.Buffer
	assert.Equal(t, exitFailed, run(context.Background(), []string{"label", "prep.toml", "--trials", "10000", "--out", "label.html"}, &out, &complaint))
	assert.Equal(t, want, out.String())
	assert.Contains(t, complaint.String(), "the disk is broken")
}

// What a command reads is not written over, whatever --force says.
func TestWhatIsReadStays(t *testing.T) {
	gumFiles(t)
	require.NoError(t, os.Symlink("prep.toml", "link.toml"))
	require.NoError(t, os.Link("prep.toml", "prep.md"))
	require.NoError(t, os.Link("prep.toml", "plan.md"))
	require.NoError(t, os.Link("record.toml", "made.txt"))
	before := map[string]string{}
	for _, name := range names(t, ".") {
		before[name] = read(t, name)
	}
	for message, args := range map[string][]string{
		"--save would replace prep.toml, which is read":     {"plan", "prep.toml", "--steps", "1", "--save", "./prep.toml", "--force"},
		"--save would replace kit.toml, which is read":      {"plan", "prep.toml", "--steps", "1", "--save", "kit.toml", "--force"},
		"--save would replace link.toml, which is read":     {"plan", "link.toml", "--steps", "1", "--save", "prep.toml"},
		"--save would replace ./kit.toml, which is read":    {"plan", "prep.toml", "--kit", "./kit.toml", "--steps", "1", "--save", "none/../kit.toml", "--force"},
		"--out would replace made.txt, which is read":       {"made", "prep.toml", "made.txt", "--out", ".", "--force"},
		"--out would replace ./plan.md, which is read":      {"plan", "./plan.md", "--out", "./", "--force"},
		"the record would replace prep.toml, which is read": {"new", "--record", "prep.toml", "link.toml", "--force"},
		"the record would replace kit.toml, which is read":  {"new", "--record", "prep.toml", "kit.toml", "--force"},
		"--out would replace prep.toml, which is read":      {"report", "prep.toml", "--out", "prep.md", "--force"},
	} {
		var out, complaint bytes.Buffer
		assert.Equal(t, exitUsage, run(context.Background(), args, &out, &complaint), message)
		assert.Equal(t, "minim: error: "+message+"\nminim: hint: choose another name\n", complaint.String())
		assert.Empty(t, out.String())
		for name, text := range before {
			assert.Equal(t, text, read(t, name), name)
		}
	}
}
