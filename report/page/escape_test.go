package page

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// The characters that a backslash may stand before: CommonMark 0.31, 2.4.
func TestEscape(t *testing.T) {
	for text, want := range map[string]string{
		"": "", "plain, 0.01 g ± 5 %": "plain, 0.01 g ± 5 %", "0.5 g": "0.5 g", "10. x": `10\. x`, "3) x": `3\) x`, "7.": `7\.`,
		"+ x": `\+ x`, "---": `\---`, "===": `\===`, "a - b": "a - b", "  two\r\n lines\u2028 ": "two lines", "\u202eturned\x00\x1b": "turned",
		"a*b_c`d": "a\\*b\\_c\\`d", `\`: `\\`, "&lt;": `\&lt;`, "bad \xff": "bad \ufffd",
	} {
		assert.Equal(t, want, escape(text))
	}
}

func TestWrapKeepsNumbersWithTheirUnits(t *testing.T) {
	text := strings.Repeat("x", 70) + " up to 25 mL in all"
	assert.Equal(t, []string{strings.Repeat("x", 70) + " up to", "25 mL in all"}, wrap(text, 80))
	assert.Equal(t, []string{""}, wrap("", 76))
}
