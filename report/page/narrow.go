package page

import "strings"

// leastWords is how many characters a last column of words has at least, before a table is
// stacked.
const leastWords = 16

// narrow are the lines of a table that is wider than the screen with its shortest names: its last
// column of words is wrapped, or else each row becomes a paragraph of its own.
func (t *Table) narrow(width int) []string {
	if t.WordsLast {
		if lines, fits := t.wrapped(width); fits {
			return lines
		}
	}
	return t.stacked(width)
}

// wrapped goes on with the last column of words in further lines, below itself.
func (t *Table) wrapped(width int) (lines []string, fits bool) {
	rows := t.aligned(max(t.Least, 12))
	last := len(t.Head) - 1
	var short [][]string
	var words []string
	for _, row := range rows {
		text := ""
		if len(row) == last+1 {
			text, row = row[last], row[:last]
		}
		short, words = append(short, row), append(words, text)
	}
	at := 0
	for i, line := range grid(short, false) {
		lines = append(lines, line)
		if len(rows[i]) == last+1 {
			at = max(at, runes(line)+2)
		}
	}
	if width-at < leastWords || widest(lines) > width {
		return nil, false
	}
	var all []string
	for i, line := range lines {
		for k, text := range wrap(words[i], width-at) {
			if k > 0 {
				line = ""
			}
			all = append(all, strings.TrimRight(filled(line, at)+text, " "))
		}
	}
	return all, true
}

// stacked says of each row its name, and behind it each cell with its head.
func (t *Table) stacked(width int) (lines []string) {
	heads := t.heads()
	for i := range t.Rows {
		r := &t.Rows[i]
		mark := "  "
		if r.Marked {
			mark = "* "
		}
		var parts []string
		for column, cell := range r.Cells[1:] {
			switch head := heads[column+1]; {
			case cell == "":
			case t.isLong(i, column+1) || head == "" || t.WordsLast && column+1 == len(t.Head)-1:
				parts = append(parts, cell)
			default:
				parts = append(parts, head+" "+cell)
			}
		}
		text := r.name()
		if len(parts) > 0 {
			text = strings.TrimPrefix(text+": ", ": ") + strings.Join(parts, "; ")
		}
		for k, line := range wrap(text, width-4) {
			if k > 0 {
				mark = "    "
			}
			lines = append(lines, mark+line)
		}
	}
	return lines
}
