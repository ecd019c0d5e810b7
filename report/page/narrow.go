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
	for most := max(t.Most, 1); most >= max(t.Least, 1) && !fits; most-- {
		lines, fits = t.wrappedWith(most, width)
	}
	return lines, fits
}

// wrappedWith is that with names of at most so many characters. A row with fewer cells goes on below its
// last one.
func (t *Table) wrappedWith(most, width int) (all []string, fits bool) {
	rows := t.aligned(most)
	last := len(t.Head) - 1
	var short [][]string
	for _, row := range rows {
		short = append(short, row[:min(len(row)-1, last)])
	}
	lines := grid(short, false)
	at := make([]int, last+1) // where the last cell begins, by the number of those before it
	for i, row := range short {
		at[len(row)] = max(at[len(row)], runes(lines[i])+2)
	}
	for i, line := range lines {
		n := len(short[i])
		if width-at[n] < leastWords || n == 0 {
			return nil, false
		}
		for k, text := range wrap(rows[i][n], width-at[n]) {
			if k > 0 {
				line = ""
			}
			all = append(all, strings.TrimRight(filled(line, at[n])+text, " "))
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
