package page

import (
	"strconv"
	"strings"
)

// Text renders a page for a screen of so many characters.
func (p *Page) Text(width int) string {
	w := &screen{width: width}
	w.blocks(p.Blocks)
	return w.String()
}

// screen takes lines of at most width characters.
type screen struct {
	strings.Builder
	width int
}

func (w *screen) blocks(blocks []Block) {
	for _, b := range shown(true, blocks) {
		b.text(w)
	}
}

// gap is an empty line, but at the very top.
func (w *screen) gap() {
	if w.Len() > 0 {
		w.WriteString("\n")
	}
}

// leastBeside is how many characters there must be room for beside a label.
const leastBeside = 20

// hang writes a text with a label in front, wrapped beside the label.
func (w *screen) hang(label, text string, indent int) {
	label = strings.ReplaceAll(onScreen(label), unbroken, " ")
	if w.width-indent < leastBeside {
		indent = min(indent, 4)
	}
	switch long := runes(label); {
	case label == "" || long < indent:
	case long > w.width/2: // the text begins below it
		for _, line := range wrap(label, w.width) {
			w.WriteString(line + "\n")
		}
		label = ""
	default:
		indent = long + 1
	}
	for i, line := range wrap(text, w.width-indent) {
		if i > 0 {
			label = ""
		}
		w.WriteString(pad(label, indent) + line + "\n")
	}
}

func (t Title) text(w *screen) {
	w.hang("", t.Text, 0)
	if t.Below != "" {
		w.hang("", t.Below, 0)
	}
}

func (h Heading) text(w *screen) {
	w.gap()
	switch {
	case h.Silent:
	case h.Label != "":
		w.hang(h.Label, h.Text, runes(h.Label)+2)
	case h.Lead != "":
		w.hang(h.Text, h.Lead, runes(h.Text)+2)
	default:
		w.hang("", h.Text, 0)
	}
}

func (Gap) text(w *screen)  { w.gap() }
func (Figure) text(*screen) {}

func (p Paragraph) text(w *screen) {
	if p.Label == "" {
		w.hang("", p.Text, p.At)
		return
	}
	w.hang(p.Label+":", p.Text, max(p.At, runes(p.Label)+2))
}

func (s Steps) text(w *screen) {
	for i, item := range s.Items {
		w.hang(right(strconv.Itoa(max(s.First, 1)+i), 4)+"  ", item, 7)
	}
}

func (b Bullets) text(w *screen) {
	label := b.Label
	if label == "" {
		label = "  -"
	}
	for _, item := range b.Items {
		w.hang(label, item, max(b.At, runes(label)+1))
	}
}

func (f Facts) text(w *screen) {
	for _, fact := range f.List {
		label := strings.Repeat(" ", f.Indent) + fact.Label
		if f.Most > 0 {
			label = strings.Repeat(" ", f.Indent) + Shorten(fact.Label, f.Most)
		}
		if f.Colon && fact.Label != "" {
			label += ":"
		}
		at := f.At
		if at == 0 {
			at = runes(label) + 1
		}
		w.hang(label, fact.Text, at)
	}
}

func (n Notes) text(w *screen) {
	label, items := n.Label+":", n.Items
	switch n.Join {
	case "\n":
	case "":
		items = []string{strings.Join(items, "; ")}
	default:
		items = []string{strings.Join(items, n.Join)}
	}
	for _, item := range items {
		w.hang(label, item, max(n.At, runes(n.Label)+2))
		label = ""
	}
}

func (f Fold) text(w *screen) {
	Heading{Text: f.Title}.text(w)
	w.blocks(f.Blocks)
}

func (o Only) text(w *screen) { w.blocks(o.Blocks) }
