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

// hang writes a text with a label in front, wrapped beside the label.
func hang(b *strings.Builder, label, text string, indent int) {
	for i, line := range wrap(text, indent) {
		if i > 0 {
			label = ""
		}
		b.WriteString(pad(label, indent) + line + "\n")
	}
}

// pad fills up with spaces on the right, and leaves one at least.
func pad(s string, to int) string {
	return s + strings.Repeat(" ", max(to-runes(s), min(1, to)))
}

// right fills up with spaces on the left.
func right(s string, to int) string {
	return strings.Repeat(" ", max(0, to-runes(s))) + s
}

func runes(s string) int { return utf8.RuneCountInString(s) }

// fit shortens the names in a table, from most characters down to least, until it
// fits on the screen; rows makes the table with names of at most so many.
func fit(most, least int, rows func(most int) [][]string) [][]string {
	table := rows(most)
	for ; most > least && widest(grid(table)) > width; most-- {
		table = rows(most - 1)
	}
	return table
}

// widest is the number of characters of the widest line.
func widest(lines []string) int {
	most := 0
	for _, line := range lines {
		most = max(most, runes(line))
	}
	return most
}

// writeGrid writes a table.
func writeGrid(b *strings.Builder, rows [][]string) {
	for _, line := range grid(rows) {
		b.WriteString(line + "\n")
	}
}

// grid aligns cells in columns: the first to the left, the others to the right.
// A row of one cell runs across.
func grid(rows [][]string) []string {
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
		line := row[0] + strings.Repeat(" ", widths[0]-runes(row[0]))
		for i, cell := range row[1:] {
			if len(row) == 2 {
				line += "  " + cell
				continue
			}
			line += "  " + right(cell, widths[i+1])
		}
		lines[r] = strings.TrimRight(line, " ")
	}
	return lines
}
