package report

import (
	"strings"
	"unicode/utf8"
)

// width of the first screen, in characters.
const width = 80

// wrap breaks a text into lines of at most width characters after an indent of
// that many columns. A number is not parted from the word after it.
func wrap(text string, indent int) []string {
	var lines []string
	line := ""
	for _, chunk := range chunks(text) {
		if line != "" && indent+runes(line)+1+runes(chunk) > width {
			lines = append(lines, line)
			line = ""
		}
		if line != "" {
			line += " "
		}
		line += chunk
	}
	return append(lines, line)
}

// chunks splits a text at spaces, but not after a digit.
func chunks(text string) []string {
	var list []string
	for _, word := range strings.Fields(text) {
		if n := len(list); n > 0 && endsInDigit(list[n-1]) {
			list[n-1] += " " + word
			continue
		}
		list = append(list, word)
	}
	return list
}

func endsInDigit(s string) bool { return s[len(s)-1] >= '0' && s[len(s)-1] <= '9' }

// right fills up with spaces on the left.
func right(s string, to int) string {
	return strings.Repeat(" ", max(0, to-runes(s))) + s
}

func runes(s string) int { return utf8.RuneCountInString(s) }
