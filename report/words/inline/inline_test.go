package inline

import (
	"strings"
	"testing"
	"unicode"

	"github.com/stretchr/testify/assert"
)

func TestParts(t *testing.T) {
	text := "with " + Symbol("γ") + " = " + Symbol("m") + "/" + Symbol("V", "1", "20 °C") + " by " + Verbatim("minim -5 *a*")
	assert.Equal(t, []Part{
		{Words, "with "}, {Italic, "γ"}, {Words, " = "}, {Italic, "m"}, {Words, "/"}, {Italic, "V"}, {Index, "1, 20 °C"}, {Words, " by "}, {Letters, "minim -5 *a*"},
	}, Parts(text))
	assert.Equal(t, "with γ = m/V_1, 20 °C by minim -5 *a*", Plain(text))
	assert.Equal(t, "no marks", Plain("no marks"))
	assert.Empty(t, Parts(""))
}

// Marks that do not belong together mark nothing, and none of them is left.
func TestMarksThatDoNotFit(t *testing.T) {
	for text, want := range map[string]string{
		"\uE000": "", "\uE003": "", "\uE000V": "V", "a\uE003b": "ab", "\uE000\uE003": "", "\uE000V\uE0011\uE003": "V_1", "\uE001\uE002x\uE003\uE003": "x", "a\uE000": "a",
		Symbol("V\uE003<b>", "\uE0001"): "V<b>_1", Verbatim("\uE002\uE003"): "",
		"a\xEE\uE003\x80\x81b": "a\uFFFD\uFFFDb", Symbol("\xEE\uE003\x80\x81"): "\uFFFD\uFFFD\uFFFD", "\xEE\uE000\x80\uE003\x80": "\uFFFD\uFFFD\uFFFD",
	} {
		assert.Equal(t, want, Plain(text), "%q", text)
	}
	for _, r := range []rune{symbol, index, verbatim, end} {
		assert.False(t, unicode.IsGraphic(r), "files refuse %U, and pages leave it out", r)
		assert.Len(t, string(r), markSize)
	}
}

func TestOutside(t *testing.T) {
	b := func(text string) string { return strings.ReplaceAll(text, "a", "b") }
	assert.Equal(t, "b "+Verbatim("a")+" b"+Verbatim("aa")+"b", Outside("a "+Verbatim("a")+" a"+Verbatim("aa")+"a", b))
	assert.Equal(t, "b", Outside("a", b))
	assert.Equal(t, "b\uE002a", Outside("a\uE002a", b))
	assert.Equal(t, "\uE002", Outside("\uE002", b))
}

func FuzzPlain(f *testing.F) {
	f.Add(Symbol("V", "1") + " x")
	f.Fuzz(func(t *testing.T, text string) {
		for _, r := range Plain(text) {
			assert.False(t, isMark(r))
		}
	})
}
