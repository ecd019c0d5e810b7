package page

import (
	"slices"
	"strings"

	"minim/report/words/clause"
)

// Table is a table. A row with fewer cells than the head has ends in one that runs across.
type Table struct {
	Caption string
	// Head is what the columns hold, and Units a second line of it; nil for none.
	Head, Units []string
	// Numbers is the column, from 0, from which on there are numbers. On the screen
	// whatever is behind the first column, or before Numbers, stands to the right.
	Numbers int
	Rows    []Row
	// Indent of the first column on the screen, in which the mark of a row stands.
	Indent int
	// Most and Least are how many characters a name in the first column has on the screen,
	// where it is shortened until the table fits; 0: it never is.
	Most, Least int
	// NameWidth is how wide the names are at least, up to the most, when another column of
	// words follows.
	NameWidth int
	// WordsLast: the last column holds words.
	WordsLast bool
	// Class "form" has boxes to write in where cells are empty; "form remarks" and
	// "form sign" have their own widths. "inputs" is in small print.
	Class string
	// StruckCell is the column that is struck through in rows that are struck.
	StruckCell int
}

// Row is a row of a table: one that is marked stands out.
type Row struct {
	// Lead comes before the name and is never shortened: "a  ".
	Lead           string
	Cells          []string
	Marked, Struck bool
	// More: it goes on with what the row above says.
	More bool
}

// Rows are rows of which none stands out.
func Rows(cells [][]string) []Row {
	rows := make([]Row, len(cells))
	for i := range cells {
		rows[i].Cells = cells[i]
	}
	return rows
}

// heads is the head in one line.
func (t *Table) heads() []string {
	heads := slices.Clone(t.Head)
	for i, unit := range t.Units {
		heads[i] = strings.TrimSpace(heads[i] + " " + unit)
	}
	return heads
}

// isStruck reports whether a cell is struck through.
func (t *Table) isStruck(row, column int) bool {
	return t.Rows[row].Struck && column == t.StruckCell
}

// isForm reports whether there is something to write in.
func (t *Table) isForm() bool { return strings.HasPrefix(t.Class, "form") }

// isSmall reports whether a table is in small print.
func (t *Table) isSmall() bool { return t.Class == "inputs" }

// name is the first cell of a row with what leads it.
func (r Row) name() string { return strings.TrimSpace(r.Lead + r.Cells[0]) }

// isNumber reports whether a column holds numbers.
func (t *Table) isNumber(column int) bool {
	return column >= t.Numbers && !(t.WordsLast && column == len(t.Head)-1)
}

// isLong reports whether a cell takes several columns.
func (t *Table) isLong(row, column int) bool {
	return column == len(t.Rows[row].Cells)-1 && column < len(t.Head)-1
}

// text writes it with names as long as the screen permits.
func (t *Table) text(w *screen) {
	if t.Caption != "" {
		w.hang("", t.Caption, 0)
	}
	lines := grid(t.aligned(t.Most), t.WordsLast)
	for most := t.Most; most > t.Least && widest(lines) > w.width; most-- {
		lines = grid(t.aligned(most-1), t.WordsLast)
	}
	if widest(lines) > w.width {
		lines = t.narrow(w.width)
	}
	for _, line := range lines {
		w.WriteString(strings.ReplaceAll(line, unbroken, " ") + "\n")
	}
}

// aligned are the cells of head and rows, with names of at most so many characters and
// what stands to the left put into the first.
func (t *Table) aligned(most int) [][]string {
	rows := [][]string{clause.Each(t.Head, onScreen)}
	if t.Units != nil {
		rows = append(rows, clause.Each(t.Units, onScreen))
	}
	last := rows[len(rows)-1]
	last[0] = strings.Repeat(" ", t.Indent) + last[0]
	for i := range t.Rows {
		rows = append(rows, t.cells(&t.Rows[i], most))
	}
	for column := range t.Head {
		t.line(rows[len(rows)-len(t.Rows):], column)
	}
	if t.NameWidth > 0 {
		t.join(rows, t.Indent+min(most, t.NameWidth))
	}
	return rows
}

// line lines up the decimal marks of a column of numbers.
func (t *Table) line(rows [][]string, column int) {
	if column == 0 || !t.isNumber(column) {
		return
	}
	var at []int
	var cells []string
	for i, row := range rows {
		if column < len(row) && !t.isLong(i, column) {
			at, cells = append(at, i), append(cells, row[column])
		}
	}
	for i, cell := range lined(cells) {
		rows[at[i]][column] = cell
	}
}

// join puts the second column behind the first, which has so many characters.
func (t *Table) join(rows [][]string, width int) {
	for i, row := range rows {
		if i < len(rows)-len(t.Rows) {
			row[1] = row[0] // the second has no head
		} else {
			row[1] = filled(row[0], width) + "  " + row[1]
		}
		rows[i] = row[1:]
	}
}

// cells of a row on the screen.
func (t *Table) cells(r *Row, most int) []string {
	cells := clause.Each(r.Cells, onScreen)
	if t.Most > 0 {
		cells[0] = Shorten(cells[0], most)
	}
	mark := ""
	if t.Indent > 0 {
		mark = " "
	}
	if r.Marked {
		mark = "*"
	}
	cells[0] = filled(mark+r.Lead, t.Indent) + cells[0]
	return cells
}

// markdown is a table; a blank of a form is a line to write on.
func (t *Table) markdown(m *markdown) {
	if t.Caption != "" {
		m.line("", t.Caption)
	}
	heads := t.heads()
	rules := make([]string, len(heads))
	for i, head := range heads {
		heads[i], rules[i] = escape(head), "---"
		if t.isNumber(i) {
			rules[i] = "--:"
		}
	}
	m.WriteString("\n")
	m.row(heads)
	m.row(rules)
	for r := range t.Rows {
		cells := make([]string, len(heads))
		for i := range t.Rows[r].Cells {
			cells[i] = t.cellMarkdown(r, i)
		}
		m.row(cells)
	}
}

func (t *Table) cellMarkdown(row, column int) string {
	r := &t.Rows[row]
	text := escape(r.Cells[column])
	if column == 0 {
		text = escape(r.name())
	}
	switch {
	case text == "" && t.isForm():
		return `\_\_\_\_\_\_`
	case t.isStruck(row, column):
		return "~~" + text + "~~"
	case r.Marked && column == 0:
		return "**" + text + "**"
	}
	return text
}

// DropEmpty takes a column away that holds nothing below its head.
func (t *Table) DropEmpty(column int) {
	for _, row := range t.Rows {
		if row.Cells[column] != "" {
			return
		}
	}
	t.Head = slices.Delete(t.Head, column, column+1)
	if t.Units != nil {
		t.Units = slices.Delete(t.Units, column, column+1)
	}
	for i := range t.Rows {
		t.Rows[i].Cells = slices.Delete(t.Rows[i].Cells, column, column+1)
	}
}
