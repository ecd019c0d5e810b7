package quantity

import (
	"testing"
	"unicode"

	"github.com/stretchr/testify/assert"
)

// What has no shape of its own is seen as U+FFFD on a screen, and left out of a page
// (constructed).
func TestPrintable(t *testing.T) {
	for text, want := range map[string][2]string{
		"":                         {"", ""},
		"plain, 20 µL ± 5 %":       {"plain, 20 µL ± 5 %", "plain, 20 µL ± 5 %"},
		"tab\tto":                  {"tab to", "tab to"},
		" two\r\nlines ":           {" two��lines ", " two  lines "},
		"par\u2029a\u0085b":        {"par�a�b", "par a b"},
		"esc\x1b[31m\x00":          {"esc�[31m�", "esc[31m"},
		"\u202eturned\u200b\u00ad": {"�turned��", "turned"},
		"private\ue000":            {"private�", "private"},
		"bad \xff":                 {"bad �", "bad �"},
		"wide\u00a0\u2003space":    {"wide\u00a0\u2003space", "wide  space"},
		"☃ 雪 e\u0301":              {"☃ 雪 e\u0301", "☃ 雪 e\u0301"},
	} {
		assert.Equal(t, want, [2]string{Printable(text), OneLine(text)}, "%q", text)
		for _, got := range []string{Printable(text), OneLine(text)} {
			for _, r := range got {
				assert.True(t, unicode.IsGraphic(r), "%q", got)
			}
		}
		assert.Equal(t, Printable(text), Printable(Printable(text)))
		assert.Equal(t, OneLine(text), OneLine(OneLine(text)))
	}
}
