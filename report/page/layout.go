package page

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// wrap breaks a text into lines of at most so many characters, and never between words that are
// bound, unless they are longer than a line together. Its spaces are those of the keyboard.
func wrap(text string, width int) []string {
	var lines []string
	line := ""
	for _, chunk := range fitting(strings.FieldsFunc(onScreen(text), isSpace), width) {
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

// Wrapped is a text in lines of at most so many characters, each from a column on.
func Wrapped(text string, at, width int) string {
	before := strings.Repeat(" ", at)
	return before + strings.Join(wrap(text, max(width-at, leastBeside)), "\n"+before)
}

// isSpace reports whether a line may break at a character.
func isSpace(r rune) bool { return r != '\u00a0' && unicode.IsSpace(r) }

// fitting are chunks none of which is longer than a line: what is bound is parted between its words,
// and a word that is longer by itself, as the path of a file may be, where no number is parted.
func fitting(chunks []string, width int) (list []string) {
	for _, chunk := range chunks {
		if runes(chunk) <= width {
			list = append(list, chunk)
			continue
		}
		for _, word := range strings.Split(chunk, unbroken) {
			for runes(word) > max(width, 1) {
				at := breakAt(word, max(width, 1))
				list, word = append(list, string([]rune(word)[:at])), string([]rune(word)[at:])
			}
			list = append(list, word)
		}
	}
	return list
}

// breakAt is how many characters of a word stand before a break: most at the most, fewer where a
// number would be parted.
func breakAt(word string, most int) int {
	all := []rune(word)
	for at := most; at >= most/2 && at > 0; at-- {
		if !inNumber(all, at) {
			return at
		}
	}
	return most
}

// inNumber reports whether the characters on both sides of a place belong to one number.
func inNumber(text []rune, at int) bool {
	return at > 0 && at < len(text) && isFigure(text[at-1]) && isFigure(text[at])
}

func isFigure(r rune) bool { return unicode.IsDigit(r) || strings.ContainsRune(".,−±", r) }

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

// Shorten cuts a long name at the end of a word, or inside one that is long by itself,
// and never inside a number or behind one that is bound to what follows.
func Shorten(s string, most int) string {
	if runes(s) <= most {
		return s
	}
	all := []rune(s)
	for at := most - 1; at > (most-1)/4; at-- {
		if isSpace(all[at]) && !unicode.IsDigit(all[at-1]) {
			return strings.TrimRight(string(all[:at]), " \u00a0,;:+-−") + "…"
		}
	}
	return string(all[:breakAt(s, most-1)]) + "…"
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
