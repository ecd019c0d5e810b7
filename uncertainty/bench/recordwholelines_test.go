package bench

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment/benchfile"
	"minim/uncertainty/record"
)

const above = "route = \"µ\"\n\n[entries]\n1 = { take = \"1 mL\" }\n"

// entryLines are the entries that a text reads as, each as number = what was taken.
func entryLines(t *testing.T, text []byte) (entries []string) {
	t.Helper()
	whole, _ := wholeLines("r.toml", text)
	root, err := benchfile.Parse("r.toml", whole)
	if err != nil {
		t.Fatalf("%q: %v", text, err)
	}
	table := root.Table("entries")
	for _, key := range table.Keys() {
		entries = append(entries, key+" = "+table.Table(key).Text("take"))
	}
	return entries
}

// addedNext is what is written behind a text for its next entry.
func addedNext(t *testing.T, text []byte) string {
	lines := fmt.Sprintf("%d = {take=\"µ\"}\n", len(entryLines(t, text))+1)
	if !bytes.Contains(text, []byte("[entries]")) {
		lines = "[entries]\n" + lines
	}
	joint, lines := joined("r.toml", text, lines)
	return joint + lines
}

// brokenEverywhere adds an entry to a text, with the writing broken off after each
// byte, and to each of the pieces that are left in turn, to some depth. It checks that
// the text reads as before until all of the entry is there.
func brokenEverywhere(t *testing.T, text []byte, depth int) {
	before := entryLines(t, text)
	added := addedNext(t, text)
	after := append(slices.Clip(before), fmt.Sprintf("%d = µ", len(before)+1))
	for n := range len(added) + 1 {
		piece := slices.Concat(text, []byte(added[:n]))
		want := before
		if n >= len(strings.TrimRight(added, "\r\n")) {
			want = after
		}
		if got := entryLines(t, piece); !slices.Equal(got, want) {
			t.Fatalf("%q reads as %q, want %q", piece, got, want)
		}
		if depth > 1 && n > 0 {
			brokenEverywhere(t, piece, depth-1)
		}
	}
}

// Whatever byte the writing breaks off after, the text reads as before or with the
// whole entry, and can be added to (constructed).
func TestBrokenOffAfterEachByte(t *testing.T) {
	brokenEverywhere(t, []byte("[entries]\n"), 3)
	for _, text := range []string{above, "route = 'µ'\n", above + "2 = { take = \"\u2028\" } # µ\n"} {
		for _, end := range []string{"\n", "\r\n"} {
			text := strings.ReplaceAll(text, "\n", end)
			brokenEverywhere(t, []byte(text), 2)
			brokenEverywhere(t, []byte(strings.TrimSuffix(text, end)), 2)
		}
	}
}

// Lines that are cut off: each leaves spaces, and its line end (constructed).
func TestWholeCut(t *testing.T) {
	for _, c := range []struct {
		above, line, below string
		cut                record.Cut
	}{
		{"", "[entr", "", record.Cut{Line: 1, Text: "[entr"}},
		{"", "rou", "", record.Cut{Line: 1, Text: "rou"}},
		{"# µ\n\n", "route = \"t", "", record.Cut{Line: 3, Text: "route = \"t"}},
		{above, "7", "", record.Cut{Line: 5, Text: "7"}},
		{above, "7 =", "", record.Cut{Line: 5, Text: "7 ="}},
		{above, "7 = { take = \"1 \xc2", "", record.Cut{Line: 5, Text: "7 = { take = \"1 \uFFFD"}},
		{above, "\t7 = { take = '\u2028}'", "", record.Cut{Line: 5, Text: " 7 = { take = '\uFFFD}'"}},
		{above, `7 = { take = "\"}", read = { a = [1] }`, "", record.Cut{Line: 5, Text: `7 = { take = "\"}", read = { a = [1] }`}},
		{above, `7 = { take = "\"}`, "", record.Cut{Line: 5, Text: `7 = { take = "\"}`}},
		{"", `route = "a [b]`, "", record.Cut{Line: 1, Text: `route = "a [b]`}},
		{above, "7 = { take = \"1.0 # cut o", "", record.Cut{Line: 5, Text: "7 = { take = \"1.0 # cut o"}},
		{above, "7 = { # cut off, left out", "", record.Cut{Line: 5, Text: "7 = { # cut off, left out"}},
		{above, "7 = { # cut off, left out", "\r", record.Cut{Line: 5, Text: "7 = { # cut off, left out"}},
		{above, "7 = { # cut off, left out", "\n8 = { take = \"2 mL\" }", record.Cut{Line: 5, Text: "7 = { # cut off, left out"}},
		{above, "7 = { # cut off, left out", "\r\n8 = { take = \"2 mL\" }\r\n", record.Cut{Line: 5, Text: "7 = { # cut off, left out"}},
		{above, "# caf\xc3", "", record.Cut{Line: 5, Text: "# caf\uFFFD"}},
		{above, "\x00\x00", "", record.Cut{Line: 5, Text: "\uFFFD\uFFFD"}},
	} {
		text := c.above + c.line + c.below
		want := c.above + strings.Repeat(" ", len(c.line)) + c.below
		if c.below == "\r" {
			want = c.above + strings.Repeat(" ", len(c.line+c.below))
		}
		whole, cut := wholeLines("r.toml", []byte(text))
		assert.Equal(t, want, string(whole), "%q", text)
		assert.Equal(t, []record.Cut{c.cut}, cut, "%q", text)
	}
}

// What is not cut off, right or wrong, is left as it is (constructed).
func TestWholeKeeps(t *testing.T) {
	for _, text := range []string{
		"", "\n", "# µ", "route = 'x'", "[entries]", above, strings.TrimSuffix(above, "\n"), above + " ",
		above + "7 = {\n", above + "7\r\n", above + "7 = { take = \"1 \xc2\n", // ended
		above + "1 = { take = \"1 mL\" }",                 // a number twice
		above + "route = 'x'", "route = 'x'\nroute = 'y'", // a key twice
		above + "2 = { Take = \"1 mL\" }", above + "2 = { take = 1 mL} ", // other mistakes
		above + "2 = { take = \"1 mL\", note = \"caf\xe9\" }", // another encoding
		above + "2 = { take = '# cut off, left out' }",
		above + "2 = { take = '''1 mL\n# cut off ''' }",
		"a = 2026-13-13\n" + above + "2 = { take = '''1 mL\n mL''', read = 1 }", // a mistake above
		above + "7 = {\n8 = { take",
	} {
		whole, cut := wholeLines("r.toml", []byte(text))
		assert.Equal(t, text, string(whole))
		assert.Empty(t, cut, "%q", text)
	}
}

// Half of a line end is none of the text (constructed).
func TestWholeHalfLineEnd(t *testing.T) {
	text := strings.TrimSuffix(strings.ReplaceAll(above, "\n", "\r\n"), "\n")
	whole, cut := wholeLines("r.toml", []byte(text))
	assert.Equal(t, strings.TrimSuffix(text, "\r")+" ", string(whole))
	assert.Empty(t, cut)
}

// Two that were struck, with the mistake below them in its place (constructed).
func TestWholePlaces(t *testing.T) {
	text := "rou # cut off, left out\n" + above + "2 = { take = \"µ # cut off, left out\n\t3 = { take = 1,5 }\n"
	whole, cut := wholeLines("r.toml", []byte(text))
	assert.Equal(t, []record.Cut{{Line: 1, Text: "rou # cut off, left out"}, {Line: 6, Text: "2 = { take = \"µ # cut off, left out"}}, cut)
	_, err := benchfile.Parse("r.toml", whole)
	require.ErrorContains(t, err, "r.toml:7:15: ")
}
