package page

import (
	"strconv"
	"strings"
)

// htmlCell is a cell as HTML has it: how many columns it takes where that is not one, and the
// class by which it is set.
type htmlCell struct {
	Text, Class string
	// Head of its column, which stands before it where the table has no room for columns.
	Head   string
	Span   int
	Struck bool
}

// columns are the heads. A column of numbers with several units is two in HTML, so that decimal
// marks and units stand below each other.
func (t *Table) columns() (list []htmlCell) {
	for i, head := range t.heads() {
		cell := htmlCell{Text: head}
		if t.isNumber(i) {
			cell.Class = "number"
		}
		if t.isParted(i) {
			cell.Span = 2
		}
		list = append(list, cell)
	}
	return list
}

// set are the cells of a row.
func (t *Table) set(row int) (list []htmlCell) {
	r := &t.Rows[row]
	heads := t.heads()
	for i, text := range r.Cells {
		cell := htmlCell{Text: text, Struck: t.isStruck(row, i)}
		if len(heads) >= manyColumns && text != "" && !t.isForm() {
			cell.Head = heads[i]
		}
		switch {
		case i == 0:
			cell.Text = r.name()
		case t.isLong(row, i):
			cell.Head = ""
			cell.Span = t.widthFrom(i)
		case t.isNumber(i):
			list = append(list, t.number(cell, i)...)
			continue
		}
		list = append(list, cell)
	}
	return list
}

// number is a cell of a column of numbers, and one with its unit where the column has several.
func (t *Table) number(cell htmlCell, column int) []htmlCell {
	whole, decimals, unit, found := figuresOf(cell.Text)
	cell.Class = "number"
	if t.isParted(column) {
		if !found {
			cell.Span = 2
			return []htmlCell{cell}
		}
		cell.Text = whole + decimals
		cell.Class += " parted"
	}
	if most := t.mostDecimals(column); found && most > 0 {
		if missing := most - len(decimals); missing > 0 {
			cell.Class += cellMissing(missing, decimals == "")
		}
	}
	if !t.isParted(column) {
		return []htmlCell{cell}
	}
	return []htmlCell{cell, {Text: strings.TrimSpace(unit), Class: "unit", Struck: cell.Struck}}
}

// cellMissing are the classes that keep room for decimals that a number has not, and for its
// mark.
func cellMissing(missing int, mark bool) string {
	if !mark {
		return " n" + strconv.Itoa(min(missing, 9))
	}
	return " n" + strconv.Itoa(min(missing-1, 9)) + " whole"
}

// manyColumns have no room beside each other on a narrow screen.
const manyColumns = 4

// isParted reports whether the numbers of a column have several units. A form keeps its widths, and small
// print stays close.
func (t *Table) isParted(column int) bool {
	if t.isForm() || t.isSmall() || column == 0 || !t.isNumber(column) {
		return false
	}
	first, several := "", false
	seen := false
	t.eachNumber(column, func(_, unit string) {
		several = several || seen && unit != first
		first, seen = unit, true
	})
	return several
}

// mostDecimals of a column, with their mark.
func (t *Table) mostDecimals(column int) (most int) {
	if t.isSmall() {
		return 0
	}
	t.eachNumber(column, func(decimals, _ string) { most = max(most, len(decimals)) })
	return most
}

func (t *Table) eachNumber(column int, of func(decimals, unit string)) {
	for r := range t.Rows {
		if column < len(t.Rows[r].Cells) && !t.isLong(r, column) {
			if _, decimals, unit, found := figuresOf(t.Rows[r].Cells[column]); found {
				of(decimals, unit)
			}
		}
	}
}

// widthFrom is how many columns of HTML there are from one on.
func (t *Table) widthFrom(column int) (width int) {
	for i := column; i < len(t.Head); i++ {
		width++
		if t.isParted(i) {
			width++
		}
	}
	return width
}
