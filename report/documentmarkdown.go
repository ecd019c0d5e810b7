package report

import (
	"fmt"
	"strings"
)

// markdown renders a document as Markdown. A picture is a file of the given name beside
// it; without one it is left out.
func (d *document) markdown(pictureFile string) []byte {
	m := new(markdown)
	for _, b := range d.Blocks {
		switch b := b.(type) {
		case headline:
			m.line("# ", b.Text)
			if b.Below != "" {
				m.line("", b.Below)
			}
		case sectionHead:
			m.line("## ", b.Text)
		case bar:
			m.WriteString("\n" + bold(b.Text) + "\n")
		case paragraph:
			m.line("", b.Text)
		case quotation:
			m.line("> ", b.Text)
		case instructionList:
			m.steps(1, b.Items)
		case bulletList:
			m.list(b.Items)
		case termList:
			m.terms(b.List)
		case tabular:
			m.tabular(b)
		case picture:
			if pictureFile != "" {
				fmt.Fprintf(m, "\n![%s](%s)\n", escape(b.Alt), strings.ReplaceAll(escape(pictureFile), " ", "%20"))
				m.line("", b.Caption)
			}
		case labelSheet:
			m.labels(b)
		}
	}
	return []byte(strings.TrimPrefix(m.String(), "\n"))
}

func (m *markdown) terms(list []term) {
	facts := make([]fact, len(list))
	for i, t := range list {
		facts[i] = fact{escape(t.Label), t.Text}
	}
	m.facts(facts)
}

// tabular is a table; a blank of a form is a line to write on.
func (m *markdown) tabular(t tabular) {
	if t.Caption != "" {
		m.line("", t.Caption)
	}
	m.head(append([]string(nil), t.Head...), t.Numbers)
	for r, row := range t.Rows {
		cells := make([]string, len(row))
		for i, cell := range row {
			cells[i] = escape(cell)
			switch {
			case cell == "" && t.Class != "":
				cells[i] = `\_\_\_\_\_\_`
			case t.IsStruck(r, i):
				cells[i] = "~~" + cells[i] + "~~"
			case r == t.Marked && i == 0:
				cells[i] = "**" + cells[i] + "**"
			}
		}
		m.row(cells)
	}
}

// bold is a text that stands out.
func bold(text string) string { return "**" + escape(strings.TrimSpace(text)) + "**" }

// labels are written once each, parted by rules.
func (m *markdown) labels(sheet labelSheet) {
	for i, l := range sheet.Labels {
		if i > 0 {
			m.WriteString("\n---\n")
		}
		for _, line := range l.Lines {
			text := escape(line.Text)
			if line.Size != "small" {
				text = bold(line.Text)
			}
			m.WriteString("\n" + text + "\n")
		}
	}
}
