package page

import (
	"fmt"
	"strings"
)

// Markdown renders a page as Markdown, with the tables of GitHub Flavored Markdown. A name
// or a note of the user stays the text that it is: see [escape].
func (p *Page) Markdown() []byte {
	m := new(markdown)
	m.blocks(p.Blocks)
	return []byte(strings.TrimPrefix(m.String(), "\n"))
}

// markdown takes words and escapes every one.
type markdown struct{ strings.Builder }

func (m *markdown) blocks(blocks []Block) {
	for _, b := range shown(false, blocks) {
		b.markdown(m)
	}
}

// line is a heading or, without a mark, a paragraph.
func (m *markdown) line(mark, text string) { m.WriteString("\n" + mark + escape(text) + "\n") }

// row writes cells that are escaped already.
func (m *markdown) row(cells []string) { m.WriteString("| " + strings.Join(cells, " | ") + " |\n") }

// bold is a text that stands out.
func bold(text string) string { return "**" + escape(strings.TrimSpace(text)) + "**" }

// labelled is "Wanted: 15 mL", or the text alone.
func labelled(label, text string) string {
	if label == "" {
		return text
	}
	return label + ": " + text
}

func (t Title) markdown(m *markdown) {
	m.line("# ", t.Text)
	if t.Below != "" {
		m.line("", t.Below)
	}
}

func (h Heading) markdown(m *markdown) {
	m.line("## ", h.words())
	if h.Lead != "" {
		m.line("", h.Lead)
	}
}

// words are the heading in one line.
func (h Heading) words() string { return labelled(h.Label, h.Text) }

func (Gap) markdown(*markdown) {}

func (p Paragraph) markdown(m *markdown) {
	switch p.Style {
	case "bar", "name", "strength", "hazard":
		m.WriteString("\n" + bold(p.Text) + "\n")
	case "quotation":
		m.line("> ", p.Text)
	default:
		m.line("", labelled(p.Label, p.Text))
	}
}

func (s Steps) markdown(m *markdown) {
	m.WriteString("\n")
	for i, item := range s.Items {
		fmt.Fprintf(m, "%d. %s\n", max(s.First, 1)+i, escape(item))
	}
}

func (b Bullets) markdown(m *markdown) {
	if len(b.Items) > 0 {
		m.WriteString("\n")
	}
	for _, item := range b.Items {
		m.WriteString("- " + escape(item) + "\n")
	}
}

func (f Facts) markdown(m *markdown) {
	m.WriteString("\n")
	colon := ":"
	if f.Bare {
		colon = ""
	}
	for _, fact := range f.joined() {
		m.WriteString("- **" + escape(fact.Label) + colon + "** " + escape(fact.Text) + "\n")
	}
}

// joined puts facts without a label to the one above.
func (f Facts) joined() (joined []Fact) {
	for _, fact := range f.List {
		if n := len(joined); fact.Label == "" && n > 0 {
			joined[n-1].Text += "; " + fact.Text
			continue
		}
		joined = append(joined, fact)
	}
	return joined
}

func (n Notes) markdown(m *markdown) {
	m.line("## ", n.Label)
	Bullets{Items: n.Items}.markdown(m)
}

func (f Figure) markdown(m *markdown) {
	if f.File != "" {
		fmt.Fprintf(m, "\n![%s](%s)\n", escape(f.Alt), strings.ReplaceAll(escape(f.File), " ", "%20"))
		if f.Caption != "" {
			m.line("", f.Caption)
		}
	}
}

func (f Fold) markdown(m *markdown) {
	m.line("## ", f.Title)
	m.blocks(f.Blocks)
}

func (o Only) markdown(m *markdown) { m.blocks(o.Blocks) }
