package quantity

import (
	"strings"
	"unicode"
)

// Printable returns a text that cannot move the cursor: a tab becomes a space,
// and what has no shape of its own, such as a control character or a change of
// direction, becomes U+FFFD.
func Printable(text string) string {
	return shown(text, unicode.ReplacementChar, func(r rune) bool { return r == '\t' })
}

// OneLine returns a text for one line of a page: white space, such as a break of the line,
// becomes a space each, and what has no shape of its own is left out.
func OneLine(text string) string { return shown(text, -1, unicode.IsSpace) }

// shown puts one character in place of each that has no shape of its own, none where it is
// below 0, and spaces in place of others.
func shown(text string, hidden rune, space func(rune) bool) string {
	return strings.Map(func(r rune) rune {
		switch {
		case space(r):
			return ' '
		case unicode.IsGraphic(r):
			return r
		}
		return hidden
	}, text)
}
