package page

import "strings"

// leastWords is how many characters a last column of words has at least, before a table is
// stacked.
const leastWords = 16

// mostParts is how many tables one becomes at the most, before it is stacked.
const mostParts = 3

// narrow are the lines of a table that is wider than the screen with its shortest names: its last
// column of words is wrapped, or it goes on with further columns below, or else each row becomes a
// paragraph of its own.
func (t *Table) narrow(width int) []string {
	if t.WordsLast {
		if lines, fits := t.wrapped(width); fits {
			return lines
		}
	}
	if lines, fits := t.parted(width); fits {
		return lines
	}
	return t.stacked(width)
}

// parted are the lines of several tables with some of the columns each, and the names in all.
func (t *Table) parted(width int) (lines []string, fits bool) {
	rows := t.aligned(max(t.Least, min(t.Most, width/2)))
	columns := len(rows[0])
	parts := 0
	for from := 1; from < columns; parts++ {
		to, part := columns, t.columnsOf(rows, from, columns)
		for ; part != nil && widest(part) > width && to > from; to-- {
			part = t.columnsOf(rows, from, to-1)
		}
		if part == nil || to == from || parts == mostParts {
			return nil, false
		}
		if parts > 0 {
			lines = append(lines, "")
		}
		lines, from = append(lines, part...), to
	}
	return lines, true
}

// columnsOf are the lines of the names and of some columns; nil where a row has a cell that runs across.
func (t *Table) columnsOf(rows [][]string, from, to int) []string {
	var some [][]string
	for _, row := range rows {
		if len(row) < len(rows[0]) {
			return nil
		}
		some = append(some, append([]string{row[0]}, row[from:to]...))
	}
	words := t.WordsLast && to == len(rows[0])
	if to == from+1 && !words { // a row of two cells would run across
		for i := range some {
			some[i] = append(some[i], "")
		}
	}
	return grid(some, words)
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
