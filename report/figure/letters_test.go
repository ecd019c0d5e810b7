package figure

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Names in scripts that the font does not have, or that are written from right to left (invented).
var scripts = []string{"שיטה עם בקבוק", "طريقة القارورة", "二次希釈", "दो बार पतला", "ละลาย☃☃☃"}

// An SVG keeps every letter of a name, in one piece where it is written from right to left; a PNG
// has a number for it, and a note.
func TestLettersStay(t *testing.T) {
	for _, name := range scripts {
		c := compare(t, recipe(within8, usual[0], way{name, fine}, usual[2], usual[3]))
		f, err := Spread(c)
		require.NoError(t, err)
		raw, err := f.SVG()
		require.NoError(t, err)
		words := strings.Join(texts(t, raw), "\n")
		assert.Contains(t, strings.ReplaceAll(words, "\n", ""), strings.ReplaceAll(name, " ", " ")[:9])
		assert.NotContains(t, words, "?")
		p := f.InPixels()
		require.NotSame(t, f, p, name)
		raw, err = p.SVG()
		require.NoError(t, err)
		words = strings.Join(texts(t, raw), "\n")
		assert.Contains(t, words, "route 2", name)
		assert.Contains(t, strings.ReplaceAll(words, "\n", " "), "stand as numbers here", name)
		assert.NotContains(t, words, "?", name)
		assert.False(t, hasForeign(words), "%s: %s", name, words)
	}
}

// A figure whose letters the font has is the same in pixels.
func TestPlainLettersAreTheSame(t *testing.T) {
	c := compare(t, cases["usual"])
	for _, draw := range kinds {
		f, err := draw(c)
		require.NoError(t, err)
		assert.Same(t, f, f.InPixels())
	}
}

// What is foreign is one run from its first letter to its last; marks stay with their letters.
func TestRuns(t *testing.T) {
	for words, want := range map[string][]run{
		"":                 nil,
		"plain":            {{words: "plain"}},
		"10⁻⁶ g":           {{words: "10"}, {words: "⁻⁶", up: true}, {words: " g"}},
		"a שלום, עולם b":   {{words: "a "}, {words: "שלום, עולם", foreign: true}, {words: " b"}},
		"中 mL":             {{words: "中", foreign: true}, {words: " mL"}},
		"u\u0301b":         {{words: "u\u0301b"}},
		"שלום 25 mL: שלום": {{words: "שלום", foreign: true}, {words: " 25 mL: "}, {words: "שלום", foreign: true}},
	} {
		assert.Equal(t, want, runs(words), words)
	}
}

// An unknown letter is an em wide, a mark on a letter takes no room, and what stands above the line
// is smaller.
func TestWidths(t *testing.T) {
	assert.InDelta(t, 2*float64(nameText.Font.Size), float64(nameText.Width("中中")), 1e-9)
	assert.InDelta(t, float64(nameText.Width("u")), float64(nameText.Width("u\u0301")), 3)
	assert.InDelta(t, float64(nameText.Width("10"))+raisedSize*float64(nameText.Width("−6")), float64(nameText.Width("10⁻⁶")), 1e-9)
}

// A word that must not be broken is cut whole letters at a time, and what follows stands on the next
// line.
func TestWholeWords(t *testing.T) {
	word := strings.Repeat("שלום", 30)
	lines := hand{}.wrap(nameText, 100, 2, word+" 25 mL")
	require.Len(t, lines, 2)
	assert.True(t, strings.HasSuffix(lines[0], "…"))
	assert.Equal(t, "25 mL", lines[1])
	for _, line := range (hand{}).wrap(nameText, 60, 5, strings.Repeat("e\u0301\u0302", 40)) {
		assert.False(t, strings.HasPrefix(line, "\u0301") || strings.HasPrefix(line, "\u0302"), "%q", line)
	}
	// A number keeps its unit.
	assert.Equal(t, []string{"made up to", "0.01 g scale"}, hand{}.wrap(nameText, nameText.Width("made up to 0.01"), 2, "made up to 0.01 g scale"))
}
