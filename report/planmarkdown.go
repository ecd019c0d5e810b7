package report

import (
	"strings"
)

// grid is a table whose first two rows are its head.
func (m *markdown) grid(rows [][]string) {
	names := make([]string, len(rows[0]))
	for i := range names {
		names[i] = strings.TrimSpace(rows[0][i] + " " + strings.TrimSpace(rows[1][i]))
	}
	m.head(names, 1)
	for _, row := range rows[2:] {
		cells := make([]string, len(names))
		for i, cell := range row {
			cells[i] = escape(strings.TrimSpace(cell))
		}
		m.row(cells)
	}
}

// named is a section of lines with labels, or nothing where there are none.
func (m *markdown) named(title string, lines []fact) {
	if len(lines) == 0 {
		return
	}
	m.line("## ", title)
	m.WriteString("\n")
	for _, l := range lines {
		m.WriteString("- **" + escape(l.Label) + "** " + escape(l.Text) + "\n")
	}
}
