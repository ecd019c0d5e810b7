package page

// Block is a part of a page. As text and as Markdown it writes itself; the page template
// knows it by the name of its type.
type Block interface {
	text(w *screen)
	markdown(m *markdown)
}

type (
	// Title is the title at the top, with a line below it.
	Title struct{ Text, Below string }
	// Heading opens a section. On the screen it stands after an empty line.
	Heading struct {
		// Label comes before the text, as in "USE  two dilutions" and "USE: two dilutions".
		Label string
		Text  string
		// Lead is the first paragraph; on the screen it stands beside the heading.
		Lead string
		// Silent leaves on the screen only the empty line.
		Silent bool
	}
	// Gap is an empty line on the screen.
	Gap struct{}
	// Paragraph is running text with a label, which may be empty.
	Paragraph struct {
		Label, Text string
		// At is the column of the text on the screen; 0: just behind the label.
		At int
		// Style "bar" is a warning that stands out, white on black, above what it is about;
		// "quotation" stands apart, ready to be copied; "small" is small print.
		Style string
	}
	// Steps are numbered, from First; 0 is from 1.
	Steps struct {
		First int
		Items []string
	}
	// Bullets is a list; on the screen each item hangs behind the label, as in "  also:", at
	// the column At.
	Bullets struct {
		Items []string
		Label string
		At    int
	}
	// Facts are labels with a text each. One without a label goes on with the one above.
	Facts struct {
		List []Fact
		// At is the column of the texts on the screen; 0: just behind each label.
		At int
		// Indent of the labels on the screen.
		Indent int
		// Colon puts one behind the labels on the screen, as Markdown has it anyway; Bare
		// leaves it out everywhere.
		Colon, Bare bool
		// Most characters of a label on the screen; 0: all.
		Most int
	}
	// Notes are a section of its own in Markdown, and a paragraph behind its label on the
	// screen, with the column At and the items joined by "; " or what Join says; "\n": each
	// on lines of its own.
	Notes struct {
		Label string
		Items []string
		At    int
		Join  string
	}
	// Figure is a PNG, with the words for those who cannot see it. HTML holds it; Markdown
	// names the File beside it, and leaves it out without one, as text does anyway. Class
	// names a size that it is printed at, where there is room.
	Figure struct {
		PNG                []byte
		File, Alt, Caption string
		Class              string
	}
	// Fold is a section that HTML shows closed.
	Fold struct {
		Title  string
		Blocks []Block
	}
	// Only are blocks for the text screen, or for the other formats.
	Only struct {
		Text   bool
		Blocks []Block
	}
)

// Fact is a label and what it says.
type Fact = struct{ Label, Text string }
