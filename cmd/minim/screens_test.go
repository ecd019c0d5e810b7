package main

import (
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/report/words/glance"
)

// What is tested is as wide as a screen of which nothing is known, whatever window the tests are run in.
func init() { _ = os.Unsetenv("COLUMNS") }

// widths of windows whose screens are kept.
var widths = []int{40, 60, 80, 100}

// inWindow is what a command prints in a window of so many columns.
func inWindow(t *testing.T, columns int, args ...string) string {
	t.Helper()
	t.Setenv("COLUMNS", strconv.Itoa(columns))
	defer os.Unsetenv("COLUMNS")
	return output(t, args...)
}

// kept compares an output with the file that it is kept in, or writes that.
func kept(t *testing.T, file, got string) {
	t.Helper()
	if *update {
		require.NoError(t, os.MkdirAll(filepath.Dir(file), 0o755))
		require.NoError(t, os.WriteFile(file, []byte(got), 0o644))
	}
	sameText(t, read(t, file), got, file+" (read it aloud, and run with -update)")
}

// within checks that no line is longer than a window.
func within(t *testing.T, text string, columns int, args ...string) {
	t.Helper()
	for line := range strings.SplitSeq(text, "\n") {
		assert.LessOrEqual(t, utf8.RuneCountInString(line), columns, "%v: %s", args, line)
	}
}

// answers begin with a word in capitals.
var answers = regexp.MustCompile(`(?m)^(USE|NEAREST|VERDICT|TO|OUTSIDE|INSIDE|MADE|NOT|IN|SAYS|MAKES|NOTHING)\b`)

// atAGlance checks what every first screen has: its lines, and that the last one repeats the answer.
func atAGlance(t *testing.T, text string, columns int, args ...string) {
	t.Helper()
	within(t, text, columns, args...)
	if columns >= glance.Columns {
		assert.LessOrEqual(t, strings.Count(text, "\n"), glance.Lines, "%v:\n%s", args, text)
	}
	words := strings.Join(strings.Fields(text), " ")
	at := answers.FindAllStringIndex(text, -1)
	require.NotEmpty(t, at, "%v:\n%s", args, text)
	last := strings.Join(strings.Fields(text[at[len(at)-1][0]:]), " ")
	assert.Equal(t, 2, strings.Count(words, last), "%v: the last line repeats the answer %q:\n%s", args, last, text)
	assert.Contains(t, words, "Safety data sheets and local rules decide.", "%v", args)
	for _, word := range []string{"form factor", "owner", "near equal", "curvature", "prep "} {
		assert.NotContains(t, words, word, "%v", args)
	}
}

// The first screens of the demo fit in 24 lines of 80 columns, and in every window.
func TestFirstScreensOfTheDemo(t *testing.T) {
	skipIfSlow(t)
	folder, err := filepath.Abs("../../testdata/screens")
	require.NoError(t, err)
	t.Chdir(t.TempDir())
	output(t, "new", "demo")
	for name, args := range map[string][]string{
		"compare": {"compare"}, "plan": {"plan", "--trials", "10000"}, "buy": {"buy", "--steps", "1", "--trials", "10000"}, "made": {"made", "--trials", "10000"},
		"rescue": {"rescue", "demo/dye.toml", "--has", "0.08 % w/v, 10 mL", "--trials", "10000"},
		"change": {"compare", "--trials", "10000", "--change", "0.01 g scale: readability = 0.001 g"},
	} {
		for _, columns := range widths {
			got := inWindow(t, columns, args...)
			kept(t, filepath.Join(folder, name+"-"+strconv.Itoa(columns)+".txt"), got)
			atAGlance(t, got, columns, args...)
		}
	}
	for _, columns := range widths {
		got := inWindow(t, columns, "kit")
		kept(t, filepath.Join(folder, "kit-"+strconv.Itoa(columns)+".txt"), got)
		within(t, got, columns, "kit")
	}
}

// A window may be of any width: nothing is narrower than 40 columns or wider than 120.
func TestWidthOfTheWindow(t *testing.T) {
	for said, want := range map[string]int{"": 80, "80": 80, "1": 40, "40": 40, "97": 97, "500": 120, "wide": 80, "-5": 80, "0": 80} {
		t.Setenv("COLUMNS", said)
		assert.Equal(t, want, console{}.width(), said)
	}
	for _, columns := range []int{40, 53, 120} {
		within(t, inWindow(t, columns, "kit"), columns)
		whole, _, _ := strings.Cut(inWindow(t, columns, "compare", "--trials", "10000", "--route", "two dilutions", "--all"), "\nNext:")
		within(t, whole, columns)
	}
}
