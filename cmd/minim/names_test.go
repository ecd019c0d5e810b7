package main

import (
	"bytes"
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"unicode"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Names that would move the cursor, turn the direction of writing or end the line, and what
// a line that is pasted names them by.
var rawNames = map[string]string{
	"a\nb": `$'a\nb'`, "esc\x1b[2J": `$'esc\033[2J'`, "\u202egnp": `$'\342\200\256gnp'`, "it's\tso!": `$'it\047s\011so\041'`,
	`back\` + "\n$(id)": `$'back\134\n$(id)'`, "no\xfftext\u200b�": `$'no\377text\342\200\213�'`,
}

func TestQuotedWithoutShape(t *testing.T) {
	for word, want := range rawNames {
		assert.Equal(t, want, quoted(word))
		assert.True(t, shows(quoted(word)))
	}
	assert.Equal(t, "./--out=x", quotedFile("--out=x"))
	assert.Equal(t, "./-", quotedFile("-"))
	if os.PathSeparator == '/' {
		assert.Equal(t, `'a\b'`, quoted(`a\b`))
	}
}

func TestShellReadsEscapes(t *testing.T) {
	shell, err := exec.LookPath("bash")
	if err != nil {
		t.Skip("there is no bash here")
	}
	for _, word := range []string{"a\nb", "esc\x1b[2J", "\u202egnp", "it's\tso!", `back\` + "\n$(id)", "no\xfftext\u200b�", `a\b`, `a\`, "$(id)\\`id`"} {
		out, err := exec.Command(shell, "-c", "printf %s "+quoted(word)).Output()
		require.NoError(t, err, word)
		assert.Equal(t, word, string(out))
	}
}

// rawFiles puts an invented prep, its kit and its record under raw names into a folder of
// their own.
func rawFiles(t *testing.T, name string) (prep, record string) {
	t.Helper()
	gumFiles(t)
	prep, record = name+" prep.toml", name+" record.toml"
	require.NoError(t, os.Rename("kit.toml", "kit"+name))
	require.NoError(t, os.Rename("prep.toml", prep))
	require.NoError(t, os.Rename("record.toml", record))
	return prep, record
}

// assertPrintable checks that nothing in a text can move the cursor but the ends of lines.
func assertPrintable(t *testing.T, text, about string) {
	t.Helper()
	assert.Equal(t, -1, strings.IndexFunc(text, func(r rune) bool { return r != '\n' && !unicode.IsGraphic(r) }), "%s: %q", about, text)
	assert.NotContains(t, text, "\nforged", about)
}

// No name from the command line gets to the terminal raw, whatever a command says of it,
// and no line feed in one begins a line.
func TestNamesOfFilesAreShownSafely(t *testing.T) {
	skipIfSlow(t)
	if runtime.GOOS == "windows" {
		t.Skip("there are no such names")
	}
	for _, name := range []string{"esc\x1b[31m", "\u202erev", "line\nforged"} {
		prep, record := rawFiles(t, name)
		kit := "kit" + name
		for _, args := range [][]string{
			{"compare", prep, "--kit", kit}, {"compare", prep}, {"compare", name}, {"compare", prep, "--kit", name}, {"compare", prep, "--kit", kit, "--route", name},
			{"compare", prep, "--kit", kit, "--out", "out" + name}, {"compare", prep, "--kit", kit, "--out", "out" + name}, {"compare", prep, "--kit", kit, "--out", prep},
			{"compare", prep, "--kit", kit, "--format", "json"}, {"compare", prep, "--kit", kit, "--format", "markdown"}, {"compare", "--" + name}, {name}, {"-" + name},
			{"compare", prep, "--kit", kit, "--change", name + ": capacity = \"3 g\""}, {"compare", prep, "--kit", kit, "--format", name}, {"compare", prep, "--kit", kit, "--trials", name},
			{"compare", prep, "--kit", kit, "--change", "scale: readability = \"0.1 g\""}, {"kit", kit}, {"kit", prep}, {"kit", name},
			{"plan", prep, "--kit", kit, "--steps", "1", "--save", "saved" + name}, {"plan", prep, "--kit", kit, "--steps", "1", "--without", name},
			{"made", prep, record, "--kit", kit, "--by", name, "--add", "step 1: done"}, {"made", prep, record, "--kit", kit, "--by", "AK", "--add", "step 1: " + name},
			{"made", prep, record, "--kit", kit, "--by", "AK", "--add", "step 1: done", "--add", "step 2: done"}, {"made", prep, record, "--kit", kit, "--to", name},
			{"made", prep, record, "--kit", kit, "--to", "3 % w/v"}, {"made", prep, name}, {"made", prep}, {"made", prep, record, name},
			{"report", prep, "--kit", kit, "--record", record}, {"report", prep, "--kit", kit, "--record", record, "--out", name + ".html"}, {"report", prep, "--out", name},
			{"label", prep, "--kit", kit, "--by", name}, {"sheet", prep, "--kit", kit, "--out", filepath.Join(name, "sheet.md")},
			{"new", "new" + name}, {"new", "new" + name}, {"new", "--record", prep, "--kit", kit, "record" + name}, {"new", "--record", name}, {"new", "--record", prep, "--kit", kit, "--route", name},
			{"rescue", prep, "--kit", kit, "--has", name}, {"rescue", prep, "--kit", kit, "--has", "8 % w/v, 20 mL"}, {"help", name},
		} {
			var out, complaint bytes.Buffer
			if args[0] == "compare" || args[0] == "report" || args[0] == "made" {
				args = append(args, "--trials", "10000")
			}
			run(context.Background(), args, &out, &complaint)
			assertPrintable(t, out.String(), strings.Join(args, " "))
			assertPrintable(t, complaint.String(), strings.Join(args, " "))
		}
	}
}

// The line that new proposes names the folder so that a shell takes it as a name.
func TestNewProposesAQuotedName(t *testing.T) {
	t.Chdir(t.TempDir())
	for dir, want := range map[string]string{"my bench": `"my bench/dye.toml"`, "$(touch x)": `'$(touch x)/dye.toml'`, "plain": "plain/dye.toml"} {
		out := output(t, "new", dir)
		assert.True(t, strings.HasSuffix(out, "Next: minim compare "+filepath.FromSlash(want)+"\n"), out)
	}
	out := output(t, "new", "--record", "my bench/dye.toml", "--route", "two dilutions", "a record.toml")
	assert.True(t, strings.HasSuffix(out, "Next: minim made \"my bench/dye.toml\" \"a record.toml\"\n"), out)
}
