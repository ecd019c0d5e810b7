package main

import (
	"bytes"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// archive is a command with its input files and what it should do, in one text
// file: words on what it shows, lines "$ minim ..." , then sections that start
// with "-- NAME --". A NAME that ends in " (quoted)" holds lines of Go string
// literals, for bytes that no text file should hold. In what it should do a line of
// three dots stands for any number of lines: see [follows].
type archive struct {
	path, comment string
	commands      []string
	sections      []section
}

type section struct{ name, text string }

func readArchive(t *testing.T, path string) *archive {
	t.Helper()
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	a := &archive{path: path}
	for line := range strings.Lines(string(data)) {
		name, ok := sectionName(line)
		switch {
		case ok:
			a.sections = append(a.sections, section{name: name})
		case len(a.sections) > 0:
			a.sections[len(a.sections)-1].text += line
		case strings.HasPrefix(line, "$ minim"):
			a.commands = append(a.commands, strings.TrimSpace(strings.TrimPrefix(line, "$ minim")))
			fallthrough
		default:
			a.comment += line
		}
	}
	return a
}

func sectionName(line string) (string, bool) {
	line = strings.TrimRight(line, "\n")
	if !strings.HasPrefix(line, "-- ") || !strings.HasSuffix(line, " --") || len(line) < 7 {
		return "", false
	}
	return line[3 : len(line)-3], true
}

// expected are the sections that say what should happen; the others are files.
var expected = []string{"exit", "stdout", "stderr", "files"}

func (a *archive) get(name string) string {
	for _, s := range a.sections {
		if s.name == name {
			return s.text
		}
	}
	return ""
}

func (a *archive) set(name, text string) {
	for i := range a.sections {
		if a.sections[i].name == name {
			a.sections[i].text = text
			return
		}
	}
	a.sections = append(a.sections, section{name, text})
}

// bytes of a file section.
func (s section) bytes(t *testing.T) (name string, data []byte) {
	t.Helper()
	name, quoted := strings.CutSuffix(s.name, " (quoted)")
	if !quoted {
		return name, []byte(s.text)
	}
	for line := range strings.Lines(s.text) {
		text, err := strconv.Unquote(strings.TrimSpace(line))
		require.NoError(t, err, line)
		data = append(data, text...)
	}
	return name, data
}

func (a *archive) write(t *testing.T) {
	t.Helper()
	var b bytes.Buffer
	b.WriteString(a.comment)
	for _, s := range a.sections {
		b.WriteString("-- " + s.name + " --\n" + s.text)
	}
	require.NoError(t, os.WriteFile(a.path, b.Bytes(), 0o644))
}
