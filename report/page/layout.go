package page

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// wrap breaks a text into lines of at most so many characters, and never between words that are
// bound. Its spaces are those of the keyboard.
func wrap(text string, width int) []string {
	var lines []string
	line := ""
	for _, chunk := range strings.FieldsFunc(onScreen(text), func(r rune) bool { return r != '\u00a0' && unicode.IsSpace(r) }) {
		if line != "" && runes(line)+1+runes(chunk) > width {
			lines = append(lines, line)
			line = ""
		}
		if line != "" {
			line += " "
		}
		line += chunk
	}
	lines = append(lines, line)
	for i := range lines {
		lines[i] = strings.Join(strings.Fields(lines[i]), " ")
	}
	return lines
}

// pad fills up with spaces on the right, and leaves one at least.
func pad(s string, to int) string {
	return s + strings.Repeat(" ", max(to-runes(s), min(1, to)))
}

// filled fills up with spaces on the right.
func filled(s string, to int) string { return s + strings.Repeat(" ", max(0, to-runes(s))) }

// right fills up with spaces on the left.
func right(s string, to int) string {
	return strings.Repeat(" ", max(0, to-runes(s))) + s
}

func runes(s string) int { return utf8.RuneCountInString(s) }

// shorten cuts a long name.
func shorten(s string, most int) string {
	if runes(s) <= most {
		return s
	}
	return string([]rune(s)[:most-1]) + "…"
}

// widest is the number of characters of the widest line.
func widest(lines []string) int {
	most := 0
	for _, line := range lines {
		most = max(most, runes(line))
	}
	return most
}

// grid aligns cells in columns: the first to the left, and the last where it holds words, the
// others to the right. A row of one cell runs across.
func grid(rows [][]string, wordsLast bool) []string {
	var widths []int
	for _, row := range rows {
		for i, cell := range row {
			if i == len(widths) {
				widths = append(widths, 0)
			}
			if len(row) > 2 || i == 0 {
				widths[i] = max(widths[i], runes(cell))
			}
		}
	}
	lines := make([]string, len(rows))
	for r, row := range rows {
		line := filled(row[0], widths[0])
		for i, cell := range row[1:] {
			if len(row) == 2 || wordsLast && i == len(row)-2 {
				line += "  " + cell
				continue
			}
			line += "  " + right(cell, widths[i+1])
		}
		lines[r] = strings.TrimRight(line, " ")
	}
	return lines
}
